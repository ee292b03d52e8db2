import { describe, expect, it } from "vitest";
import { z } from "zod";
import { compareRates } from "../../src/domain/statistics/compare-rates.ts";
import { compareSirs } from "../../src/domain/statistics/compare-sirs.ts";
import { compareUtilization } from "../../src/domain/statistics/compare-utilization.ts";
import { shrinkRates } from "../../src/domain/statistics/shrinkage.ts";
import { expectSame, figureOf, readStatistics } from "./read-statistics.ts";

const bound = z.union([z.number(), z.literal("Infinity")]);
const limits = z.object({ lower: z.number(), upper: bound, p_two_sided_doubling: z.number() });

describe("two rates, mpmath 1.2.1 at 40 digits", () => {
  const row = z.object({
    ...{ x1: z.number(), t1: z.number(), x2: z.number(), t2: z.number(), rate_ratio: bound.nullable() },
    ...{ midp: limits.nullable(), exact: limits.nullable() },
  });
  const { rows } = readStatistics("rate-ratio.json", z.object({ rows: z.array(row).length(13) }));

  it.each(rows)("$x1 in $t1 against $x2 in $t2, mid-P and exact, to 1e-9", (one) => {
    const [first, second] = [
      { events: one.x1, days: one.t1 },
      { events: one.x2, days: one.t2 },
    ];
    for (const [by, expected] of [
      ["mid-p", one.midp],
      ["exact", one.exact],
    ] as const) {
      const found = compareRates({ first, second, level: 0.95, by });
      if (expected === null) {
        expect(found.ratio).toEqual({ value: null, reason: expect.stringContaining("no events on either side") });
        continue;
      }
      expectSame(figureOf(found.lower), expected.lower);
      expectSame(figureOf(found.p), expected.p_two_sided_doubling);
      // What the reference calls infinite has no value here, but a reason.
      for (const [ours, theirs] of [
        [found.ratio, one.rate_ratio],
        [found.upper, expected.upper],
      ] as const) {
        if (theirs === "Infinity") expect(ours.value).toBeNull();
        else expectSame(figureOf(ours), Number(theirs));
      }
    }
  });

  it.each(rows.filter(({ x1, x2 }) => x1 + x2 > 0))("two SIRs are the same test: $x1 of $t1, $x2 of $t2", (one) => {
    const found = compareSirs({
      first: { observed: one.x1, predicted: one.t1 },
      second: { observed: one.x2, predicted: one.t2 },
      ...{ level: 0.95, by: "mid-p" },
    });
    expectSame(figureOf(found.lower), one.midp?.lower ?? Number.NaN);
    expectSame(figureOf(found.p), one.midp?.p_two_sided_doubling ?? Number.NaN);
  });
});

const reference = readStatistics(
  "comparisons.json",
  z.object({
    source: z.string(),
    two_by_two: z.array(
      z.object({
        table: z.tuple([z.number(), z.number(), z.number(), z.number()]),
        ...{ p: z.number(), ratio: z.number().optional(), lower: z.number().optional(), upper: z.number().optional() },
      }),
    ),
    shrinkage: z.array(
      z.object({
        wards: z.array(z.tuple([z.number(), z.number()])),
        ...{ pooled: z.number(), variance: z.number() },
        shrunken: z.array(z.tuple([z.number(), z.number(), z.number()])),
      }),
    ),
  }),
);

describe(reference.source, () => {
  it(`${reference.two_by_two.length} tables of two utilization ratios: p by exact fractions, Taylor limits, to 1e-9`, () => {
    expect(reference.two_by_two.length).toBe(74);
    for (const { table, p, ratio, lower, upper } of reference.two_by_two) {
      const [a, n1, c, n2] = table;
      const first = { catheterDays: a, patientDays: n1 };
      const found = compareUtilization({ first, second: { catheterDays: c, patientDays: n2 }, level: 0.95 });
      expectSame(figureOf(found.p), p);
      if (ratio === undefined || lower === undefined || upper === undefined) {
        expect([found.lower.value, found.upper.value]).toEqual([null, null]);
        continue;
      }
      expectSame(figureOf(found.ratio), ratio);
      expectSame(figureOf(found.lower), lower);
      expectSame(figureOf(found.upper), upper);
    }
  });

  it(`${reference.shrinkage.length} groups of wards: shrunken rates with limits, to 1e-9`, () => {
    expect(reference.shrinkage.length).toBe(8);
    expect(reference.shrinkage.some(({ variance }) => variance === 0)).toBe(true);
    for (const { wards, pooled, variance, shrunken } of reference.shrinkage) {
      const found = shrinkRates(
        wards.map(([events, days]) => ({ events, days })),
        { level: 0.95 },
      );
      if ("value" in found) throw new Error(found.reason);
      expectSame(found.pooled, pooled);
      // A difference of two nearly equal sums: of its digits some are lost in either program.
      expectSame(found.variance, variance, 1e-8);
      for (const [at, [rate, lower, upper]] of shrunken.entries()) {
        expectSame(found.wards[at]?.rate, rate);
        expectSame(found.wards[at]?.lower, lower);
        expectSame(found.wards[at]?.upper, upper);
      }
    }
  });
});
