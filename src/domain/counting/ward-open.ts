import type { DayNumber } from "../days/day-number.ts";

/** Whether a ward has patients on a facility day: up to its last day, which is the one on which it is said to close. */
export function isOpenOn({ closedDay }: { readonly closedDay: DayNumber | null }, day: DayNumber): boolean {
  return closedDay === null || day <= closedDay;
}
