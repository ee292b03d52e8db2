import { expect } from "vitest";
import { z } from "zod";
import { agreement } from "../../src/domain/counting/agreement.ts";
import { pool } from "../../src/domain/counting/pool.ts";
import { utilization } from "../../src/domain/counting/utilization.ts";
import { weeklySample } from "../../src/domain/counting/weekly-sample.ts";
import { weeklySampleEligibility } from "../../src/domain/counting/weekly-sample-eligibility.ts";
import { expectPrinted } from "./expect-printed.ts";
import type { ReferenceCase } from "./read-data.ts";
import { wardOf } from "./ward-of-totals.ts";

const numbers = z.array(z.number());

/** Sums of daily counts and their utilization ratio. */
export function checkDailySums(one: ReferenceCase): void {
  const catheters = numbers.parse(one.inputs.daily_patients_with_IUC);
  const parts = numbers
    .parse(one.inputs.daily_patients)
    .map((patientDays, index) => ({ patientDays, catheterDays: catheters[index] ?? Number.NaN }));
  const sums = pool(["patientDays", "catheterDays"], parts);
  expect(sums).toEqual({ patientDays: one.expected.patient_days, catheterDays: one.expected.catheter_days });
  expectPrinted(utilization(sums).value, z.number().parse(one.expected.DUR), 4);
}

/** The weekly-sample estimate and the figures it comes from. */
export function checkSample(one: ReferenceCase): void {
  const sampled = z.array(z.object({ patients: z.number(), with_IUC: z.number() })).parse(one.inputs.sampled);
  const result = weeklySample({
    sampled: sampled.map((day) => ({ patients: day.patients, catheters: day.with_IUC })),
    monthPatientDays: z.number().parse(one.inputs.month_patient_days_counted_daily),
  });
  expect(result.sampledPatientDays).toBe(one.expected.sampled_patient_days);
  expect(result.sampledCatheterDays).toBe(one.expected.sampled_catheter_days);
  expectPrinted(result.sampledUtilization.value, z.number().parse(one.expected.sample_DUR), 4);
  expectPrinted(result.catheterDays.value, z.number().parse(one.expected.estimated_catheter_days), 2);
}

/** Whether a ward may sample. */
export function checkSamplingEligibility(one: ReferenceCase): void {
  const mean = z.number().parse(one.inputs.mean_monthly_catheter_days_last_12_months);
  const ward = { specialtyCareOrOncology: false, neonatal: false, weekday: 3 } as const;
  const result = weeklySampleEligibility({ ...ward, pastCatheterDays: Array.from({ length: 12 }, () => mean) });
  expect(result.verdict === "may sample").toBe(one.expected.eligible);
}

/** Three months of two counts, used for patient-days and catheter-days alike. */
export function checkAgreement(one: ReferenceCase): void {
  const result = agreement(wardOf(numbers.parse(one.inputs.manual), numbers.parse(one.inputs.electronic)));
  expect(result.verdict === "accepted").toBe(one.expected.accepted);
  for (const quantity of [result.patientDays, result.catheterDays]) {
    expect(quantity.months.map((compared) => compared.manual)).toEqual(one.inputs.manual);
    expect(quantity.months.map((compared) => compared.outcome === "agrees")).toEqual(one.expected.month_ok);
    const tolerance = quantity.months[0]?.tolerance;
    if ("tolerance_month1" in one.expected) {
      expect([tolerance?.low, tolerance?.high]).toEqual(one.expected.tolerance_month1);
    }
  }
}
