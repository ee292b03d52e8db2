import type { DayNumber } from "../days/day-number.ts";

/** Facility days from first to last, both included. */
export interface DayStretch {
  readonly first: DayNumber;
  readonly last: DayNumber;
}

/**
 * The days of all stretches, each once; stretches may overlap, touch and come in any order.
 * Throws a plain Error for a stretch that ends before it begins or has no whole day numbers.
 */
export function daysOf(stretches: readonly DayStretch[]): Set<DayNumber> {
  const days = new Set<DayNumber>();
  for (const { first, last } of stretches) {
    if (!Number.isSafeInteger(first) || !Number.isSafeInteger(last) || last < first) {
      throw new Error(`no stretch of days runs from day number ${first} to ${last}`);
    }
    for (let day = first; day <= last; day += 1) days.add(day);
  }
  return days;
}
