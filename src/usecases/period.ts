import { refuse } from "../../shared/problems.ts";
import type { DayNumber } from "../domain/days/day-number.ts";
import type { DayRange } from "../store/ward-days.ts";

const longest = 366;

/** Refuses `end-before-start` and `period-too-long` for days that nobody should ask for at once. */
export function refuseLongPeriod({ first, last }: DayRange): void {
  if (last < first) refuse("end-before-start", "The last day is before the first.", { pointer: "/last" });
  const days: DayNumber = last - first + 1;
  if (days > longest) refuse("period-too-long", `These are ${days} days.`, { pointer: "/last" });
}
