import type { Month } from "../../shared/day.ts";
import type { Tx } from "./store.ts";
import { daysOfMonths, touchDays } from "./trace.ts";

/** The month of a line that may touch any. */
export const anyMonth = "";

/**
 * Begins the month of a row that holds for each later month too. Letters come after digits in the order of every
 * database, so such rows are one range of the index.
 */
export const from = "from ";

/** From a month to another one, both included; null: to each later one. */
export interface Months {
  readonly from: Month;
  readonly to: Month | null;
}

/** Notes that something of these months changes. */
export function touchMonths(tx: Tx, all: readonly Months[]): void {
  touchDays(tx, ...new Map(all.map((one) => [`${one.from} ${one.to}`, daysOfMonths(one)])).values());
}

/** The months of a stored row. The casts are safe: `placeLines` wrote it. */
export function monthsOf(written: string): Months[] {
  if (written === anyMonth) return [];
  if (written.startsWith(from)) return [{ from: written.slice(from.length) as Month, to: null }];
  return [{ from: written as Month, to: written as Month }];
}
