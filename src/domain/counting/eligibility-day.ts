import type { DayNumber } from "../days/day-number.ts";
import { type DayExists, dayBefore, everyDayExists } from "./day-before.ts";
import { type DayStretch, daysOf } from "./day-stretch.ts";

/** An event is catheter-associated only when the catheter was in place for more than this many days in a row. */
const tooFewDays = 2;

/**
 * The eligibility day of every facility day that has one, in the order of days. Never to be mixed with denominator
 * days (present at the census) or with the age of one catheter.
 *
 * A facility day has a number when an indwelling urethral catheter was in place for any part of it and the patient was
 * in an inpatient ward for any part of it, whether or not at the same hour. The first such day is 1, so a catheter
 * already in place on arrival starts on the first inpatient day. The number goes on across removal and reinsertion;
 * one full facility day without a catheter, or one full facility day outside inpatient care, restarts it at 1. A date
 * that the zone skipped is no day: it has no number and restarts nothing.
 *
 * `catheterDays` holds the stretches of indwelling urethral catheters alone. Throws a plain Error for a stretch that
 * ends before it begins.
 *
 * Sources: CDC Patient Safety Component Manual, chapter 7 (insertion day is day 1, a full calendar day off restarts:
 * read in the national adaptation of Taiwan; any part of a day, in place on arrival, and the restart by leaving
 * inpatient care: from memory).
 */
export function eligibilityDays(input: {
  catheterDays: readonly DayStretch[];
  inpatientDays: readonly DayStretch[];
  dayExists?: DayExists;
}): Map<DayNumber, number> {
  const dayExists = input.dayExists ?? everyDayExists;
  const inpatient = daysOf(input.inpatientDays);
  const counted = [...daysOf(input.catheterDays)].filter((day) => inpatient.has(day) && dayExists(day));
  const numbers = new Map<DayNumber, number>();
  for (const day of counted.sort((a, b) => a - b)) {
    numbers.set(day, (numbers.get(dayBefore(day, dayExists)) ?? 0) + 1);
  }
  return numbers;
}

/**
 * Whether a urinary tract infection with this date of event can be catheter-associated: the eligibility day is more
 * than 2 on that day, or was on the day before when that day has none. So it is first possible on day 3 and last on
 * the day after the catheter was removed. Our reading: the day after discharge with the catheter in place is judged
 * like the day after a removal, because an event on it belongs to the discharging ward.
 * Source: CDC Patient Safety Component Manual, chapter 7 (read in the national adaptation of Taiwan).
 */
export function eligibleOn(
  days: ReadonlyMap<DayNumber, number>,
  dateOfEvent: DayNumber,
  dayExists: DayExists = everyDayExists,
): boolean {
  const number = days.get(dateOfEvent) ?? days.get(dayBefore(dateOfEvent, dayExists)) ?? 0;
  return number > tooFewDays;
}
