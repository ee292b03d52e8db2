import { expect } from "vitest";
import { z } from "zod";
import { agreement } from "../../src/domain/counting/agreement.ts";
import { pool } from "../../src/domain/counting/pool.ts";
import { catheterDayRate, populationRate } from "../../src/domain/counting/rates.ts";
import { utilization } from "../../src/domain/counting/utilization.ts";
import { expectPrinted } from "./expect-printed.ts";
import type { ReferenceCase } from "./read-data.ts";
import { wardOf } from "./ward-of-totals.ts";

const numbers = z.array(z.number());

/** A rate per 1,000 catheter-days. */
export function checkRate(one: ReferenceCase): void {
  const { CAUTI, catheter_days } = z.object({ CAUTI: z.number(), catheter_days: z.number() }).parse(one.inputs);
  const printed = z.number().parse(one.expected.rate_per_1000_catheter_days_1dp);
  expectPrinted(catheterDayRate({ events: CAUTI, catheterDays: catheter_days }).value, printed, 1);
}

/** A utilization ratio. */
export function checkUtilization(one: ReferenceCase): void {
  const inputs = z.object({ patient_days: z.number(), catheter_days: z.number() }).parse(one.inputs);
  const ratio = utilization({ patientDays: inputs.patient_days, catheterDays: inputs.catheter_days });
  expectPrinted(ratio.value, z.number().parse(one.expected.DUR_2dp), 2);
}

/** Six months and their pooled total: ratios of sums, never means of ratios. */
export function checkSixMonths(one: ReferenceCase): void {
  const list = (key: string) => numbers.length(6).parse(one.inputs[key]);
  const [patientDays, catheterDays, uti, cauti] = ["patient_days", "catheter_days", "UTI", "CAUTI"].map(list);
  const months = Array.from({ length: 6 }, (_, at) => {
    const value = (values: number[] | undefined) => values?.[at] ?? Number.NaN;
    return {
      patientDays: value(patientDays),
      catheterDays: value(catheterDays),
      uti: value(uti),
      cauti: value(cauti),
    };
  });
  const total = pool(["patientDays", "catheterDays", "uti", "cauti"], months);
  const printed = z.record(z.string(), z.number()).parse(one.expected.total);
  expect(total.patientDays).toBe(printed.patient_days);
  expect(total.catheterDays).toBe(printed.catheter_days);
  const expected = (key: string, totalKey: string) => [
    ...numbers.length(6).parse(one.expected[key]),
    printed[totalKey],
  ];
  const dur = expected("DUR_2dp", "DUR");
  const utiRates = expected("UTI_per_1000_patient_days_2dp", "UTI_rate");
  const cautiRates = expected("CAUTI_per_1000_catheter_days_2dp", "CAUTI_rate");
  for (const [at, row] of [...months, total].entries()) {
    expectPrinted(utilization(row).value, Number(dur[at]), 2);
    // Printed per 1,000 patient-days: a tenth of the rate per 10,000.
    const perTenThousand = populationRate({ events: row.uti, patientDays: row.patientDays }).value;
    expectPrinted(Number(perTenThousand) / 10, Number(utiRates[at]), 2);
    const perThousand = catheterDayRate({ events: row.cauti, catheterDays: row.catheterDays }).value;
    expectPrinted(perThousand, Number(cautiRates[at]), 2);
  }
}

/** Two counts of the same wards at two times of day. */
export function checkCountTime(one: ReferenceCase): void {
  const inputs = z
    .object({ CAUTI: z.number(), catheter_days_11am: z.number(), catheter_days_midnight: z.number() })
    .parse(one.inputs);
  const [morning, midnight] = [inputs.catheter_days_11am, inputs.catheter_days_midnight];
  const rate = (catheterDays: number) => catheterDayRate({ events: inputs.CAUTI, catheterDays }).value;
  expectPrinted(rate(morning), z.number().parse(one.expected.rate_11am_2dp), 2);
  expectPrinted(rate(midnight), z.number().parse(one.expected.rate_midnight_2dp), 2);
  const compared = agreement(wardOf([midnight, midnight, midnight], [morning, morning, morning]));
  const difference = compared.catheterDays.months[0]?.differencePercent ?? null;
  expectPrinted(difference, z.number().parse(one.expected.increase_in_days_pct), 1);
}

/** The population rate from a printed rate and ratio. */
export function checkPopulationRate(one: ReferenceCase): void {
  const pair = z.object({ per_1000_catheter_days: z.number(), DUR: z.number() });
  const inputs = z.object({ before: pair, after: pair }).parse(one.inputs);
  const recomputed = numbers.length(2).parse(one.expected.recomputed_from_rounded);
  const printed = [one.expected.before_per_10000_patient_days_printed, one.expected.after_printed];
  for (const [at, period] of [inputs.before, inputs.after].entries()) {
    // A made-up population so large that the printed rate and ratio give whole events.
    const patientDays = 100_000_000;
    const catheterDays = Math.round(period.DUR * patientDays);
    const events = Math.round((period.per_1000_catheter_days * catheterDays) / 1_000);
    expectPrinted(catheterDayRate({ events, catheterDays }).value, period.per_1000_catheter_days, 6);
    const rate = Number(populationRate({ events, patientDays }).value);
    expectPrinted(rate, Number(recomputed[at]), 1);
    // The source computed from unrounded figures: within 1% of what it printed.
    expect(Math.abs(rate / z.number().parse(printed[at]) - 1)).toBeLessThan(0.01);
  }
}
