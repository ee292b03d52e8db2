import type { Month } from "../../../shared/day.ts";
import type { DayNumber } from "../../domain/days/day-number.ts";
import { monthOf } from "../../domain/days/month.ts";
import { longestWindowDays } from "../../domain/editions/index.ts";
import { openAs, placesOfOpen } from "../../domain/reports/infections.ts";
import { countedCases } from "../../store/case-lists.ts";
import type { Read } from "../../store/store.ts";
import type { DayRange } from "../../store/ward-days.ts";

/** A confirmed CAUTI under its ward of attribution and its date of event. */
export interface WardInfection {
  readonly wardId: number;
  readonly day: DayNumber;
}

/** A culture beside the count of a ward and month in which it could count. */
export interface WardOpenCulture {
  readonly wardId: number;
  readonly month: Month;
  readonly caseId: number;
}

/** The CAUTIs of wards over some days, and the cultures that could still become one of theirs. */
export interface Infections {
  readonly infections: readonly WardInfection[];
  readonly open: readonly WardOpenCulture[];
}

/**
 * The CAUTIs that somebody confirmed (a disagreement is printed and changes no count), whose date of event lies in a
 * period. Call determineByNow first: time alone may have changed a determination.
 */
export async function infectionsOfWards(
  read: Read,
  facilityId: number,
  { days, wardIds }: { days: DayRange; wardIds: ReadonlySet<number> },
): Promise<Infections> {
  const { first, last } = days;
  const cases = await countedCases(read, facilityId, {
    first: first - longestWindowDays,
    last: last + longestWindowDays,
  });
  const infections = cases.flatMap(({ isCauti, state, wardId, eventDay }) => {
    const isConfirmed = isCauti && (state === "confirmed" || state === "disagreed");
    if (!isConfirmed || wardId === null || !wardIds.has(wardId) || eventDay === null) return [];
    return eventDay >= first && eventDay <= last ? [{ wardId, day: eventDay }] : [];
  });
  const months = { first: monthOf(first), last: monthOf(last) };
  const open = cases
    .filter((one) => openAs(one) !== null)
    .flatMap((one) => placesOfOpen(one).map((place) => ({ ...place, caseId: one.caseId })))
    .filter(({ wardId, month }) => wardIds.has(wardId) && month >= months.first && month <= months.last);
  return { infections, open };
}
