import type { readMonthGaps as endpoint } from "../../../shared/api/months.ts";
import type { Month } from "../../../shared/day.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { gapWords } from "../../../shared/gap-words.ts";
import { dayText } from "../../domain/days/day-number.ts";
import { monthDays } from "../../domain/days/month.ts";
import { withheldReason } from "../../domain/reports/completeness.ts";
import { gapSentence } from "../../domain/reports/gap-sentence.ts";
import { type Gap, gapsOf } from "../../domain/reports/gaps.ts";
import type { Act } from "../act.ts";
import { determineByNow } from "../cultures/determine-by-now.ts";
import { type Reach, reachOf, seesEveryPatient } from "../reach.ts";
import { censusTaken } from "./census-taken.ts";
import { monthFactsOf } from "./load-month.ts";
import { careOf, loadForCare } from "./read-care.ts";
import { infectionsIn } from "./read-infections.ts";

/** What is missing from a month of the wards within reach, and what keeps it from being signed. Refuses `in-the-future`. */
export async function readMonthGaps(
  act: Act,
  { month, wardIds }: { month: Month } & Reach,
): Promise<OutputOf<typeof endpoint>> {
  const days = monthDays(month);
  await censusTaken(act, days.first, "/month");
  await determineByNow(act);
  const gaps = await act.store.read(async (read) => {
    const loaded = await loadForCare(read, act, { days, wardIds });
    const facts = await monthFactsOf(read, act, loaded);
    const { facts: care } = await careOf(read, act, loaded);
    const ofMonth = { month, wardIds: facts.wards.map((ward) => ward.wardId) };
    const infections = await infectionsIn(read, act.actor.facilityId, ofMonth);
    return gapsOf(facts, care.wards, infections);
  });
  // Who may not open an import has no use for the way to it.
  const opens = reachOf(act.actor, "import-records") !== null;
  const reads = seesEveryPatient(act.actor);
  return { month, gaps: gaps.map((gap) => inWords(gap, { opens, reads })) };
}

/** More lines than these are found on the pages of their imports. */
const linesMost = 100;

function inWords(
  gap: Gap,
  { opens, reads }: Record<"opens" | "reads", boolean>,
): OutputOf<typeof endpoint>["gaps"][number] {
  const { kind, wardId, count, days, held } = gap;
  const { blocks, remedy } = gapWords[kind];
  const lines = kind === "dropped-lines" || opens ? (held?.lines ?? []) : [];
  return {
    ...{ kind, wardId, count, blocks, remedy },
    sentence: gapSentence(gap),
    days: days.map(dayText),
    lines: lines.slice(0, linesMost).map(({ importId, file, line, reason, by, at }) => ({
      ...{ importId, file, line: line === 0 ? null : line, by, at },
      reason: reason === null || reads ? reason : withheldReason,
    })),
    imports: opens ? [...(held?.imports ?? [])] : [],
  };
}
