import { assertCount } from "./amounts.ts";
import { assertDailyCount, type DailyCount } from "./daily-count.ts";
import { pool } from "./pool.ts";
import type { Ratio } from "./ratio.ts";
import { utilization } from "./utilization.ts";

/** A month's catheter-days estimated from one count a week, with the figures it comes from. */
export interface WeeklySample {
  readonly sampledPatientDays: number;
  readonly sampledCatheterDays: number;
  /** Catheter-days / patient-days of the sampled days. */
  readonly sampledUtilization: Ratio;
  /** The estimate in days, unrounded: the source states no rounding. */
  readonly catheterDays: Ratio;
}

/**
 * Estimates a ward's catheter-days of a month from the days on which both counts were made:
 * (sampled catheter-days / sampled patient-days) x the month's patient-days, which are counted every day.
 * Null with a reason when the sampled days hold no patients. Throws a plain Error for counts that cannot be.
 * Source: formula read in the sampling studies of Infect Control Hosp Epidemiol 2018 (central lines); its use for
 * urinary catheters: CDC Patient Safety Component Manual, chapter 7, table 2 (from memory).
 */
export function weeklySample(input: { sampled: readonly DailyCount[]; monthPatientDays: number }): WeeklySample {
  assertCount("monthPatientDays", input.monthPatientDays);
  for (const count of input.sampled) assertDailyCount(count);
  const sums = pool(["patients", "catheters"], input.sampled);
  const ratio = utilization({ patientDays: sums.patients, catheterDays: sums.catheters });
  return {
    sampledPatientDays: sums.patients,
    sampledCatheterDays: sums.catheters,
    sampledUtilization: ratio,
    catheterDays:
      ratio.value === null
        ? { value: null, reason: "The sampled days hold no patients, so catheter-days cannot be estimated." }
        : { value: (sums.catheters * input.monthPatientDays) / sums.patients },
  };
}
