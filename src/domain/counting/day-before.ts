import type { DayNumber } from "../days/day-number.ts";

/** Says whether a facility day has any instant at all; a zone that skipped a date has one that has none. */
export type DayExists = (day: DayNumber) => boolean;

/** For a zone that never skipped a date. */
export const everyDayExists: DayExists = () => true;

/** No zone of the IANA database has skipped more than one date at a time; more is a faulty `dayExists`. */
const longestSkipDays = 2;

/**
 * The facility day before this one, stepping over a date that the zone skipped (Pacific/Apia has no 2011-12-30).
 * Throws a plain Error when no day exists just before.
 */
export function dayBefore(day: DayNumber, dayExists: DayExists): DayNumber {
  for (let before = day - 1; before >= day - 1 - longestSkipDays; before -= 1) {
    if (dayExists(before)) return before;
  }
  throw new Error(`no facility day exists in the ${longestSkipDays + 1} days before day number ${day}`);
}
