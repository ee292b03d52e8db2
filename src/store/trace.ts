import type { AuditAction } from "../../shared/audit-words.ts";
import type { Month } from "../../shared/day.ts";
import { type DayNumber, dayMs, type Instant } from "../domain/days/day-number.ts";
import { monthDays } from "../domain/days/month.ts";
import type { Recording } from "./patients.ts";
import type { Tx } from "./store.ts";

/** Facility days of which something was written; `last` null: up to the present. */
export interface TouchedDays {
  readonly first: DayNumber;
  readonly last: DayNumber | null;
}

/** Who did what, as the audit entry of a transaction says it. */
export interface TracedAct {
  readonly by: Recording;
  readonly action: AuditAction;
  readonly patientIds?: readonly number[];
  readonly details: object;
}

/** What a transaction has written so far: the days that it touches, and its last audit entry. */
export interface Trace {
  touched: TouchedDays[];
  act: TracedAct | null;
}

/** A zone is at most a day from UTC, and a census at 24:00 keeps the day that ended. */
const margin = 2;

/** The days from the first month to the last one; `to` null: up to the present. */
export function daysOfMonths({ from, to }: { readonly from: Month; readonly to: Month | null }): TouchedDays {
  return { first: monthDays(from).first, last: to === null ? null : monthDays(to).last };
}

/** Notes that days were written to. */
export function touchDays({ trace }: Pick<Tx, "trace">, ...days: readonly TouchedDays[]): void {
  trace.touched.push(...days);
}

/** The same for stretches of time. */
export function touchTimes(
  tx: Pick<Tx, "trace">,
  ...times: readonly { readonly from: Instant; readonly to: Instant | null }[]
): void {
  const day = (at: Instant) => Math.floor(at / dayMs);
  touchDays(
    tx,
    ...times.map(({ from, to }) => ({ first: day(from) - margin, last: to === null ? null : day(to) + margin })),
  );
}
