import type { DayNumber } from "../days/day-number.ts";
import type { ComparedWard } from "./comparison-facts.ts";

/**
 * Catheter-days between infections of wards taken together: for each infection after the first one, the catheter-days
 * that passed before the day on which it fell, since the one before. Two on one day have a gap of 0. `since` is what has
 * passed after the last one; null when there was none.
 */
export function gapsBetween(wards: readonly Pick<ComparedWard, "days" | "infectionDays">[]): {
  gaps: number[];
  since: number | null;
} {
  const byDay = new Map<DayNumber, number>();
  for (const { days } of wards) {
    for (const { day, catheterDays } of days) byDay.set(day, (byDay.get(day) ?? 0) + catheterDays);
  }
  const days = [...byDay].sort(([a], [b]) => a - b);
  const infections = wards.flatMap(({ infectionDays }) => infectionDays).sort((a, b) => a - b);
  const gaps: number[] = [];
  let [next, passed] = [0, 0];
  let before: number | null = null;
  for (const infection of infections) {
    while (next < days.length && (days[next]?.[0] ?? 0) <= infection) passed += days[next++]?.[1] ?? 0;
    if (before !== null) gaps.push(Math.max(0, passed - before - 1));
    before = passed;
  }
  for (; next < days.length; next++) passed += days[next]?.[1] ?? 0;
  return { gaps, since: before === null ? null : passed - before };
}
