import { type DayNumber, dayMs } from "../days/day-number.ts";
import type { DayRange } from "./determination.ts";

const months = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
];

/** `10 March 2024`. */
export function dayWords(day: DayNumber): string {
  const date = new Date(day * dayMs);
  return `${date.getUTCDate()} ${months[date.getUTCMonth()]} ${date.getUTCFullYear()}`;
}

/** `7 March to 13 March 2024`; the year stands once where both days share it. */
export function rangeWords({ first, last }: DayRange): string {
  const [from, to] = [dayWords(first), dayWords(last)];
  const year = ` ${new Date(last * dayMs).getUTCFullYear()}`;
  return from.endsWith(year) ? `${from.slice(0, -year.length)} to ${to}` : `${from} to ${to}`;
}

/** `10 March 2024 and 12 March 2024`: each day once, in the order given. */
export function dayListWords(days: readonly DayNumber[]): string {
  return listWords([...new Set(days)].map(dayWords), "and");
}

/** `one day`, `3 days`. */
export function daysWords(count: number): string {
  return count === 1 ? "one day" : `${count} days`;
}

/** `a, b or c`. */
export function listWords(items: readonly string[], join: "and" | "or"): string {
  const last = items.at(-1) ?? "nothing";
  return items.length < 2 ? last : `${items.slice(0, -1).join(", ")} ${join} ${last}`;
}
