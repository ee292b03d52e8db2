import type { Fault } from "../../../shared/problems.ts";
import { acceptedDays, dayFaults } from "../cultures/accepted-days.ts";
import type { DayNumber } from "../days/day-number.ts";
import type { Plan } from "./plan.ts";

/** Faults of a day of which something is recorded: `in-the-future`, `outside-surveillance-days`. */
export function cultureDayFaults({ timeline, care }: Plan, day: DayNumber, pointer: string): Fault[] {
  const today = care.zone.dayOf(care.now);
  if (day > today) return [{ code: "in-the-future", pointer, detail: "This day has not come yet." }];
  return dayFaults(acceptedDays(timeline, care, today), day, pointer);
}
