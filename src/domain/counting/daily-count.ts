import { assertCount } from "./amounts.ts";

/** What was counted on one ward at one daily census: the patients, and how many of them had an indwelling catheter. */
export interface DailyCount {
  readonly patients: number;
  readonly catheters: number;
}

/**
 * Throws a plain Error (a bug of the caller) unless both are whole numbers and no more patients have a catheter than
 * there are patients: both are counted at the same time, so catheter-days cannot exceed patient-days.
 * Source: CDC Patient Safety Component Manual, chapter 7, table 2 (from memory).
 */
export function assertDailyCount(count: DailyCount): void {
  assertCount("patients", count.patients);
  assertCount("catheters", count.catheters);
  if (count.catheters > count.patients) {
    throw new Error(`${count.catheters} patients with a catheter are more than ${count.patients} patients`);
  }
}
