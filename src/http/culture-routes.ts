import type * as cultures from "../../shared/api/cultures.ts";
import type * as determinations from "../../shared/api/determinations.ts";
import type * as organisms from "../../shared/api/organisms.ts";
import type * as signs from "../../shared/api/signs.ts";
import { dayNumber } from "../domain/days/day-number.ts";
import { correctSign, voidSign } from "../usecases/cultures/correct-sign.ts";
import { correctSpecimen, voidSpecimen } from "../usecases/cultures/correct-specimen.ts";
import { listOrganisms } from "../usecases/cultures/list-organisms.ts";
import { readCultures } from "../usecases/cultures/read-cultures.ts";
import { readDeterminations } from "../usecases/cultures/read-determinations.ts";
import { recordSigns } from "../usecases/cultures/record-signs.ts";
import { recordSpecimen } from "../usecases/cultures/record-specimen.ts";
import { withInstants } from "./charted-times.ts";
import type { Routes } from "./routes.ts";

type Names = keyof typeof cultures | keyof typeof signs | keyof typeof determinations | keyof typeof organisms;

/** Specimens, signs and determinations: endpoint to use case. */
export const cultureRoutes: Pick<Routes, Names> = {
  readCultures: (act, input) => readCultures(act, input),
  recordSpecimen: async (act, input) => recordSpecimen(act, await withInstants(act, input, ["collectedAt"])),
  correctSpecimen: async (act, input) => {
    const given = await withInstants(act, input, ["collectedAt"], { orDay: ["collectedAt"] });
    const { specimenId, reason, seenVersion, marks, ...changes } = given;
    return correctSpecimen(act, { specimenId, reason, seenVersion, marks, changes });
  },
  voidSpecimen: (act, input) => voidSpecimen(act, input),
  recordSigns: async (act, input) => {
    const { day, lastDay, ...given } = await withInstants(act, input, ["readAt"]);
    return recordSigns(act, { ...given, day: dayNumber(day), lastDay: lastDay && dayNumber(lastDay) });
  },
  correctSign: async (act, input) => {
    const { signId, reason, seenVersion, confirm, day, lastDay, ...given } = await withInstants(act, input, ["readAt"]);
    const days = { day: day && dayNumber(day), lastDay: lastDay && dayNumber(lastDay) };
    return correctSign(act, { signId, reason, seenVersion, confirm, changes: { ...given, ...days } });
  },
  voidSign: (act, input) => voidSign(act, input),
  readDeterminations: (act, input) => readDeterminations(act, input),
  listOrganisms: () => listOrganisms(),
};
