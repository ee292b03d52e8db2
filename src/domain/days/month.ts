import type { Month } from "../../../shared/day.ts";
import { type DayNumber, dayMs, dayText } from "./day-number.ts";

/** The first and the last day of a calendar month, both included. */
export function monthDays(month: Month): { first: DayNumber; last: DayNumber } {
  const first = new Date(month);
  const next = new Date(month);
  next.setUTCMonth(next.getUTCMonth() + 1);
  return { first: first.getTime() / dayMs, last: next.getTime() / dayMs - 1 };
}

/** The calendar month that a day lies in, as `YYYY-MM`. */
export function monthOf(n: DayNumber): Month {
  // The cast is safe: the first seven characters of a day are its month.
  return dayText(n).slice(0, 7) as Month;
}

/** The calendar months that days lie in, in order. */
export function monthsFromTo({ first, last }: { first: DayNumber; last: DayNumber }): Month[] {
  const months: Month[] = [];
  for (let month = monthOf(first); months.length === 0 || month <= monthOf(last); month = nextMonth(month))
    months.push(month);
  return months;
}

/** The calendar month after this one. Throws an Error after 9999-12, the last month that can be written. */
export function nextMonth(month: Month): Month {
  return monthOf(monthDays(month).last + 1);
}
