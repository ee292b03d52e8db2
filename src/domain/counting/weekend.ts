import type { Weekday } from "../days/day-number.ts";

/** Saturday or Sunday: never a day for the weekly sample. */
export function isWeekend(weekday: Weekday): boolean {
  return weekday === 0 || weekday === 6;
}
