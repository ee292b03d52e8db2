import { expect } from "vitest";
import { z } from "zod";
import { catheterDayRate } from "../../src/domain/counting/rates.ts";
import { cad } from "../../src/domain/statistics/cad.ts";
import { compareRates } from "../../src/domain/statistics/compare-rates.ts";
import type { LimitChoice } from "../../src/domain/statistics/poisson-limits.ts";
import { poissonLimits } from "../../src/domain/statistics/poisson-limits.ts";
import { rateWithLimits } from "../../src/domain/statistics/rate-with-limits.ts";
import { sir } from "../../src/domain/statistics/sir.ts";
import { sirAgainstTarget } from "../../src/domain/statistics/sir-against-target.ts";
import { expectPrinted } from "./expect-printed.ts";
import type { ReferenceCase } from "./read-data.ts";
import { figureOf } from "./read-statistics.ts";

const number = z.number();
const pair = z.tuple([number, number]);
/** The cases follow the header of the published routine of 2014, which takes Byar's limits above 100 observed. */
const rule = { level: 0.95, by: "mid-p-to-100" } as const;

/** A rate with its printed log-Wald limits, and the mid-P limits beside them. */
export function checkRateWithLimits({ inputs, expected }: ReferenceCase): void {
  const { CAUTI: events, catheter_days: days } = z.object({ CAUTI: number, catheter_days: number }).parse(inputs);
  const found = rateWithLimits({ events, days, per: 1_000, level: 0.95, by: "mid-p" });
  const rate = figureOf(found.rate);
  expect(rate).toBe(catheterDayRate({ events, catheterDays: days }).value);
  expectPrinted(rate, number.parse(expected.rate_2dp), 2);
  const [lower, upper] = pair.parse(expected.printed_CI95);
  const factor = Math.exp(1.96 / Math.sqrt(events));
  expectPrinted(rate / factor, lower, 2);
  expectPrinted(rate * factor, upper, 2);
  const [midLower, midUpper] = pair.parse(expected.midP_CI95_3dp);
  expectPrinted(found.lower.value, midLower, 3);
  expectPrinted(found.upper.value, midUpper, 3);
}

/** A SIR with whatever limits and p value the case gives. */
export function checkSir({ id, inputs, expected }: ReferenceCase): void {
  const observed = number.parse(inputs.observed);
  const predicted = number.parse(inputs.predicted ?? inputs.expected);
  const found = sir({ observed, predicted, ...rule });
  expectPrinted(figureOf(found.ratio), number.parse(expected.SIR_3dp ?? expected.ratio_3dp), 3);
  if (expected.midP_two_sided_p_4dp !== undefined) {
    expectPrinted(figureOf(found.p), number.parse(expected.midP_two_sided_p_4dp), 4);
  }
  const limits: [string, LimitChoice][] = [
    ["midP_CI95_3dp", "mid-p"],
    ["Byar_CI95_3dp", "byar"],
    ["exact_Poisson_CI95_3dp", "exact"],
  ];
  const given = limits.filter(([key]) => expected[key] !== undefined);
  expect(given.length, `${id} gives no limits`).toBeGreaterThan(0);
  for (const [key, by] of given) {
    const [lower, upper] = pair.parse(expected[key]);
    const { lower: ours, upper: above } = sir({ observed, predicted, level: 0.95, by });
    // Nothing observed: the case prints 0 and notes that the published routine leaves the limit blank, as ours is.
    if (observed === 0) expect([lower, ours.value]).toEqual([0, null]);
    else expectPrinted(ours.value, lower, 3);
    expectPrinted(above.value, upper, 3);
  }
  const key = { "mid-p": "midP_CI95_3dp", byar: "Byar_CI95_3dp", exact: "exact_Poisson_CI95_3dp" }[
    found.method ?? "exact"
  ];
  expect(expected[key], `the published rule takes ${found.method}`).toBeDefined();
}

/** 2 observed, 2.04 predicted, against a target of 0.80. */
export function checkTarget(one: ReferenceCase): void {
  checkSir(one);
  const { observed, predicted } = z.object({ observed: number, predicted: number }).parse(one.inputs);
  const found = sirAgainstTarget({ observed, predicted: 2.04, target: 0.8, ...rule });
  expect(found.predicted).toBeCloseTo(predicted, 12);
  expectPrinted(figureOf(found.p), number.parse(one.expected.midP_two_sided_p_4dp), 4);
}

/** Fewer than one predicted. */
export function checkWithheld({ inputs, expected }: ReferenceCase): void {
  const { observed, predicted } = z.object({ observed: number, predicted: number }).parse(inputs);
  expect(expected).toEqual({ SIR: null, reason: "predicted < 1.0" });
  const { ratio, lower, upper, p } = sir({ observed, predicted, ...rule });
  const reason = "Fewer than 1.0 infections are predicted, so the SIR is withheld.";
  expect([ratio, lower, upper, p]).toEqual(Array.from({ length: 4 }, () => ({ value: null, reason })));
}

/** Mid-P limits of the counts 0 to 10. */
export function checkSmallCounts({ inputs, expected }: ReferenceCase): void {
  const limits = z.record(z.string(), pair).parse(expected.limits_4dp);
  const counts = z.array(number).length(11).parse(inputs.counts);
  for (const observed of counts) {
    const found = poissonLimits({ observed, level: 0.95, by: "mid-p" });
    const [lower, upper] = pair.parse(limits[observed]);
    expectPrinted(found.lower, lower, 4);
    expectPrinted(found.upper, upper, 4);
  }
}

const stratum = z.object({ observed: number, predicted: number, SIR_goal: number });

/** A CAD of one stratum. */
export function checkCad({ inputs, expected }: ReferenceCase): void {
  const { observed, predicted, SIR_goal: goal } = stratum.parse(inputs);
  expect(cad([{ observed, predicted, goal }])).toBeCloseTo(number.parse(expected.CAD), 9);
}

/** A CAD added over two strata. */
export function checkStrata({ inputs, expected }: ReferenceCase): void {
  const { ICU, nonICU } = z.object({ ICU: stratum, nonICU: stratum }).parse(inputs);
  const strata = [ICU, nonICU].map(({ observed, predicted, SIR_goal: goal }) => ({ observed, predicted, goal }));
  const each = strata.map((one) => cad([one]));
  expect(each[0]).toBeCloseTo(number.parse(expected.CAD_ICU), 9);
  expect(each[1]).toBeCloseTo(number.parse(expected.CAD_nonICU), 9);
  expect(cad(strata)).toBeCloseTo(number.parse(expected.CAD), 9);
}

/** Two rates whose days are inferred from printed rates: within 2%. */
export function checkRateRatio({ inputs, expected }: ReferenceCase): void {
  const group = z.object({ CAUTI: number, rate_per_1000: number });
  const { group1, group2 } = z.object({ group1: group, group2: group }).parse(inputs);
  const side = ({ CAUTI: events, rate_per_1000: rate }: z.infer<typeof group>) => ({
    events,
    days: (events / rate) * 1_000,
  });
  const found = compareRates({ first: side(group1), second: side(group2), level: 0.95, by: "mid-p" });
  const figures = [found.ratio, found.lower, found.upper, found.p].map(figureOf);
  const printed = [...z.array(number).length(3).parse(expected.midP), number.parse(expected.midP_p)];
  for (const [at, value] of printed.entries()) expect(Math.abs(Number(figures[at]) / value - 1)).toBeLessThan(0.02);
}
