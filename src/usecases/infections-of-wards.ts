import type { DayNumber } from "../domain/days/day-number.ts";
import { wardOfCase } from "../domain/reports/infections.ts";
import { casesBetween } from "../store/case-lists.ts";
import type { Read } from "../store/store.ts";
import type { DayRange } from "../store/ward-days.ts";

/** A confirmed CAUTI under its ward of attribution and its date of event. */
export interface WardInfection {
  readonly wardId: number;
  readonly day: DayNumber;
}

/** The CAUTIs of wards over some days, and how many cultures of theirs somebody or something is waited for. */
export interface Infections {
  readonly infections: readonly WardInfection[];
  readonly waiting: number;
}

/** Cases whose decision or result is still to come: they stand beside a count and never in it. */
const unsettled = new Set<string>(["waiting", "changed", "pending"]);

/**
 * The CAUTIs that somebody confirmed (a disagreement is printed and changes no count), whose date of event lies in a
 * period. Call determineByNow first: time alone may have changed a determination.
 */
export async function infectionsOfWards(
  read: Read,
  facilityId: number,
  { days, wardIds }: { days: DayRange; wardIds: ReadonlySet<number> },
): Promise<Infections> {
  const cases = await casesBetween(read, facilityId, days);
  const own = cases.filter((one) => wardIds.has(wardOfCase(one) ?? 0));
  const infections = own.flatMap(({ isCauti, state, wardId, eventDay }) =>
    isCauti && (state === "confirmed" || state === "disagreed") && wardId !== null && eventDay !== null
      ? [{ wardId, day: eventDay }]
      : [],
  );
  return {
    infections,
    waiting: own.filter(({ state, outcome }) => unsettled.has(state) || outcome === "cannot-tell").length,
  };
}
