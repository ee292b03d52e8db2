import { type DayNumber, type Weekday, weekdayOf } from "../days/day-number.ts";
import type { DayStretch } from "./day-stretch.ts";
import { isWeekend } from "./weekend.ts";

/** One week of a month's sample: the day that was planned and the day that is used. */
export interface SampledWeek {
  readonly planned: DayNumber;
  /** The planned day, else the next available day, else null: nothing was counted that week. */
  readonly used: DayNumber | null;
}

/**
 * Chooses the days of a month that make its weekly sample: one fixed weekday, and where that day has no count the next
 * available day. Never a Saturday or Sunday. Our reading of "next available": a weekday before the next planned day
 * and inside the same month, because the estimate is multiplied by that month's patient-days.
 * `counted` says whether a day has both counts. Throws a plain Error for a weekend as the fixed day; whether a ward
 * may choose it is told in words by `weekly-sample-eligibility.ts`.
 * Source: CDC Patient Safety Component Manual, chapter 7, table 2 (from memory).
 */
export function weeklySampleDays(input: {
  month: DayStretch;
  weekday: Weekday;
  counted: (day: DayNumber) => boolean;
}): SampledWeek[] {
  if (isWeekend(input.weekday)) throw new Error(`weekday ${input.weekday} cannot be the day of the weekly sample`);
  const weeks: SampledWeek[] = [];
  for (let day = input.month.first; day <= input.month.last; day += 1) {
    if (weekdayOf(day) !== input.weekday) continue;
    const used = firstAvailable(day, Math.min(day + 6, input.month.last), input.counted);
    weeks.push({ planned: day, used });
  }
  return weeks;
}

function firstAvailable(first: DayNumber, last: DayNumber, counted: (day: DayNumber) => boolean): DayNumber | null {
  for (let day = first; day <= last; day += 1) {
    if (!isWeekend(weekdayOf(day)) && counted(day)) return day;
  }
  return null;
}
