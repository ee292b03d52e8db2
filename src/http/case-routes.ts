import type * as cases from "../../shared/api/cases.ts";
import type * as editions from "../../shared/api/editions.ts";
import type * as events from "../../shared/api/events.ts";
import type * as findings from "../../shared/api/findings.ts";
import { dayNumber } from "../domain/days/day-number.ts";
import { compareEditions } from "../usecases/cultures/compare-editions.ts";
import { correctFinding, voidFinding } from "../usecases/cultures/correct-finding.ts";
import { decideCase } from "../usecases/cultures/decide-case.ts";
import { listCases } from "../usecases/cultures/list-cases.ts";
import { listEditions, readEdition } from "../usecases/cultures/list-editions.ts";
import { readCase } from "../usecases/cultures/read-case.ts";
import { readEvents } from "../usecases/cultures/read-events.ts";
import { recordFinding } from "../usecases/cultures/record-finding.ts";
import { recordNoneFound, withdrawNoneFound } from "../usecases/months/none-found.ts";
import { readMonthCultures } from "../usecases/months/read-month-cultures.ts";
import { chooseReading, listReadings } from "../usecases/settings/choose-reading.ts";
import type { Routes } from "./routes.ts";

type Names = keyof typeof cases | keyof typeof editions | keyof typeof events | keyof typeof findings;

/** The work on determined cultures, editions, events and findings: endpoint to use case. */
export const caseRoutes: Pick<Routes, Names> = {
  recordFinding: (act, { day, ...input }) => recordFinding(act, { ...input, day: dayNumber(day) }),
  correctFinding: (act, { findingId, reason, seenVersion, day, ...given }) => {
    const changes = day === undefined ? given : { ...given, day: dayNumber(day) };
    return correctFinding(act, { findingId, reason, seenVersion, changes });
  },
  voidFinding: (act, input) => voidFinding(act, input),
  listCases: (act, { list, from, month }) =>
    listCases(act, { list, from: from === undefined ? null : dayNumber(from), month: month ?? null }),
  readCase: (act, input) => readCase(act, input),
  confirmCase: (act, { remark = null, ...input }) =>
    decideCase(act, { ...input, kind: "confirmation", reason: remark }),
  disagreeWithCase: (act, input) => decideCase(act, { ...input, kind: "disagreement" }),
  reopenCase: (act, input) => decideCase(act, { ...input, kind: "reopening" }),
  recordNoneFound: (act, input) => recordNoneFound(act, input),
  withdrawNoneFound: (act, input) => withdrawNoneFound(act, input),
  readEvents: (act, { first, last }, reach) =>
    readEvents(act, { first: dayNumber(first), last: dayNumber(last), ...reach }),
  readMonthCultures: (act, { month }, reach) => readMonthCultures(act, { month, ...reach }),
  listEditions: () => Promise.resolve(listEditions()),
  readEdition: (_act, input) => Promise.resolve(readEdition(input)),
  listReadings: (act, input) => listReadings(act, input),
  chooseReading: (act, input) => chooseReading(act, input),
  compareEditions: (act, { first, last, ...input }) =>
    compareEditions(act, { ...input, first: dayNumber(first), last: dayNumber(last) }),
};
