import type { DayNumber } from "../days/day-number.ts";
import { type DayExists, everyDayExists } from "./day-before.ts";

/** How many facility days one catheter has been in place, and whether it may be more. */
export interface CatheterAge {
  /** Days, the day of insertion being day 1. */
  readonly days: number;
  /** True when the insertion is unknown: the catheter is at least this old. */
  readonly atLeast: boolean;
}

/**
 * The age of this one catheter on a facility day. The day of insertion is day 1, also when it lies before the stay.
 * With an unknown insertion (`insertedOn` null: found in place on arrival) the age is counted from the first inpatient
 * day and is "at least". An exchange begins a new catheter and a new age; the eligibility day is another number. A
 * date that the zone skipped is not counted. Throws a plain Error for a day before the count begins.
 * Source: day of insertion is day 1: CDC Patient Safety Component Manual, chapter 7 (read in the national adaptation
 * of Taiwan); first inpatient day when unknown: the same (from memory); "at least": common practice.
 */
export function catheterAge(input: {
  day: DayNumber;
  insertedOn: DayNumber | null;
  firstInpatientDay: DayNumber;
  dayExists?: DayExists;
}): CatheterAge {
  const dayExists = input.dayExists ?? everyDayExists;
  const dayOne = input.insertedOn ?? input.firstInpatientDay;
  if (input.day < dayOne) throw new Error(`day number ${input.day} is before day 1 of the catheter, ${dayOne}`);
  let days = 0;
  for (let day = dayOne; day <= input.day; day += 1) {
    if (dayExists(day)) days += 1;
  }
  return { days, atLeast: input.insertedOn === null };
}
