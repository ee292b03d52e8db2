import type { Day } from "../../../shared/day.ts";

/** A point in time: milliseconds since 1970-01-01T00:00Z, leap seconds left out, as JavaScript counts them. */
export type Instant = number;

/** A calendar date as days since 1970-01-01 (which is 0); dates before it are negative. */
export type DayNumber = number;

/** A day of the week: 0 is Sunday, 6 is Saturday. */
export type Weekday = 0 | 1 | 2 | 3 | 4 | 5 | 6;

/** Milliseconds of a calendar date, without regard to any change of the clocks. */
export const dayMs = 86_400_000;

const weekdays: readonly Weekday[] = [0, 1, 2, 3, 4, 5, 6];

/** The number of a calendar day (proleptic Gregorian calendar, ISO 8601). */
export function dayNumber(day: Day): DayNumber {
  return Date.parse(day) / dayMs;
}

/** The calendar day of a number, as `YYYY-MM-DD`. Throws an Error for a number that is no day of the years 0 to 9999. */
export function dayText(n: DayNumber): Day {
  const text = new Date(n * dayMs).toISOString();
  if (!Number.isInteger(n) || text.length !== "YYYY-MM-DDTHH:MM:SS.sssZ".length) {
    throw new Error(`${n} is not the number of a day in the years 0 to 9999`);
  }
  // The cast is safe: ISO text of a whole day in these years is exactly the form that the contract's `day` accepts.
  return text.slice(0, 10) as Day;
}

/** The days from one to another, both included; none where the first is the later. */
export function daysFromTo(first: DayNumber, last: DayNumber): DayNumber[] {
  return Array.from({ length: last - first + 1 }, (_, i) => first + i);
}

/** The day of the week of a date. */
export function weekdayOf(n: DayNumber): Weekday {
  // 1970-01-01 was a Thursday; the second remainder keeps dates before it from turning negative.
  const weekday = weekdays[(((n + 4) % 7) + 7) % 7];
  if (weekday === undefined) throw new Error(`${n} is not the number of a day`);
  return weekday;
}
