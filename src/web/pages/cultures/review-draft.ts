import type { recordSigns } from "../../../../shared/api/signs.ts";
import type { SignName } from "../../../../shared/culture-words.ts";
import type { Day } from "../../../../shared/day.ts";
import type { InputOf } from "../../../../shared/endpoint.ts";
import type { FacilityTime } from "../../parts/facility-time.ts";
import { dayTyped } from "../../parts/form/as-typed.ts";
import { dayAfter } from "../../parts/words.ts";
import { entryTime } from "../../texts/entry-time.ts";
import type { Cultures, Sign } from "./culture-rows.ts";
import { adultSigns } from "./signs-draft.ts";

/** A chart review as it is written down: days from `first` to `last`, read at a time, and the signs it does not document. */
export interface ReviewDraft {
  readonly first: string;
  readonly last: string;
  readonly readAt: string;
  readonly signs: readonly SignName[];
}

/** The signs of which nothing is recorded on these days; those of infants and of blood are added by hand. */
export function signsWithoutEntry(
  signs: readonly Sign[],
  { first, last }: { first: string; last: string },
): SignName[] {
  const isIn = ({ day, voidReason }: Sign) => voidReason === null && day >= first && day <= last;
  const recorded = new Set(signs.filter((one) => isIn(one) && one.finding !== "not-recorded").map(({ sign }) => sign));
  return adultSigns.filter((one) => !recorded.has(one));
}

/** The days around each urine culture in which signs count: 3 before and 3 after, as far as they have come. */
export function windowsOf({ specimens }: Cultures, time: FacilityTime, today: Day) {
  const cultures = specimens.filter(({ kind, voidReason }) => kind === "urine" && voidReason === null);
  return [...cultures].reverse().map((specimen) => {
    const { specimenId, collectedAt } = specimen;
    const day = time.dayOf(collectedAt);
    const last = dayAfter(day, 3);
    const collected = entryTime(time, specimen, "collectedAt")(collectedAt);
    return { specimenId, collected, first: dayAfter(day, -3), last: last > today ? today : last };
  });
}

/** What is sent of a chart review. */
export function reviewInput({
  first,
  last,
  readAt,
  signs,
}: ReviewDraft): Omit<InputOf<typeof recordSigns>, "patientId"> {
  return {
    ...{ day: dayTyped(first), lastDay: dayTyped(last), readAt },
    signs: signs.map((sign) => ({ sign, finding: "not-documented" })),
  };
}
