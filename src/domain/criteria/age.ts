import { type DayNumber, dayMs } from "../days/day-number.ts";

/**
 * Completed years of age on a day: 65 from the 65th birthday to the day before the 66th. A birthday of 29 February is
 * reached on 1 March of other years. Negative before birth.
 */
export function completedYears(birthDay: DayNumber, day: DayNumber): number {
  const [birth, date] = [new Date(birthDay * dayMs), new Date(day * dayMs)];
  const years = date.getUTCFullYear() - birth.getUTCFullYear();
  const monthsLeft = date.getUTCMonth() - birth.getUTCMonth();
  const isBefore = monthsLeft < 0 || (monthsLeft === 0 && date.getUTCDate() < birth.getUTCDate());
  return isBefore ? years - 1 : years;
}

/** Completed months of age on a day, by the day of the month; negative before birth. */
export function completedMonths(birthDay: DayNumber, day: DayNumber): number {
  const [birth, date] = [new Date(birthDay * dayMs), new Date(day * dayMs)];
  const months = (date.getUTCFullYear() - birth.getUTCFullYear()) * 12 + date.getUTCMonth() - birth.getUTCMonth();
  return date.getUTCDate() < birth.getUTCDate() ? months - 1 : months;
}
