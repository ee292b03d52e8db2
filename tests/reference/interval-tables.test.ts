import { describe, expect, it } from "vitest";
import { z } from "zod";
import { clopperPearsonLimits } from "../../src/domain/statistics/clopper-pearson-limits.ts";
import type { LimitMethod } from "../../src/domain/statistics/interval.ts";
import { midPTest } from "../../src/domain/statistics/mid-p-test.ts";
import { poissonLimits } from "../../src/domain/statistics/poisson-limits.ts";
import { wilsonLimits } from "../../src/domain/statistics/wilson-limits.ts";
import { expectPrinted } from "./expect-printed.ts";
import { expectSame, figureOf, readStatistics } from "./read-statistics.ts";

const pair = z.tuple([z.number(), z.number()]);

function expectLimits(count: { observed: number; level: number; by: LimitMethod }, [lower, upper]: [number, number]) {
  const found = poissonLimits(count);
  expectSame(found.lower, lower);
  expectSame(found.upper, upper);
}

describe("limits of a Poisson count, mpmath 1.2.1 at 40 digits", () => {
  const row = z.object({ k: z.number(), garwood: pair, midp: pair, byar: pair });
  const { levels } = readStatistics("poisson-limits.json", z.object({ levels: z.record(z.string(), z.array(row)) }));

  it.each(Object.entries(levels))(
    "level %s: 101 counts from 0 to 200, exact, mid-P and Byar, to 1e-9",
    (level, rows) => {
      expect(rows).toHaveLength(101);
      for (const { k: observed, garwood, midp, byar } of rows) {
        expectLimits({ observed, level: Number(level), by: "exact" }, garwood);
        expectLimits({ observed, level: Number(level), by: "mid-p" }, midp);
        expectLimits({ observed, level: Number(level), by: "byar" }, byar);
      }
    },
  );

  it("four levels are checked", () => expect(Object.keys(levels)).toEqual(["0.9", "0.95", "0.99", "0.998"]));

  const large = z.object({
    ...{ observed: z.number(), predicted: z.number(), ratio: z.number() },
    ...{ midp: pair, exact: pair, byar: pair, p_midp: z.number() },
  });
  const { rows } = readStatistics("large-counts.json", z.object({ rows: z.array(large).length(4) }));
  it.each(rows)("large count: $observed observed, to 1e-9", ({ observed, predicted, midp, exact, byar, p_midp }) => {
    expectLimits({ observed, level: 0.95, by: "mid-p" }, midp);
    expectLimits({ observed, level: 0.95, by: "exact" }, exact);
    expectLimits({ observed, level: 0.95, by: "byar" }, byar);
    expectSame(midPTest({ observed, predicted }), p_midp);
  });
});

describe("mid-P above 100 observed", () => {
  const row = z.object({
    ...{ observed: z.number(), level: z.number(), midp: pair },
    predicted: z.number(),
    p_midp: z.number(),
  });
  const { source, rows } = readStatistics("mid-p-large.json", z.object({ source: z.string(), rows: z.array(row) }));

  it(`${rows.length} counts of 101 to 3,000,000, ${source}: limits and p values, to 1e-9`, () => {
    expect([rows.length, Math.max(...rows.map(({ observed }) => observed))]).toEqual([31, 3_000_000]);
    for (const { observed, level, midp, predicted, p_midp } of rows) {
      expectLimits({ observed, level, by: "mid-p" }, midp);
      expectSame(midPTest({ observed, predicted }), p_midp);
    }
  });

  it("the limits of 2,000 counts up to 5,000,000 take less than 5 seconds on a busy machine", () => {
    const start = performance.now();
    for (let at = 0; at < 2_000; at++) poissonLimits({ observed: 101 + at * 2_500, level: 0.95, by: "mid-p" });
    expect(performance.now() - start).toBeLessThan(5_000);
  });
});

describe("limits and p values of SIRs, mpmath 1.2.1 at 40 digits", () => {
  const row = z.object({
    ...{ observed: z.number(), predicted: z.number(), sir: z.number(), p_midp: z.number() },
    ...{ midp_lower: z.number().nullable(), midp_upper: z.number() },
    ...{ exact_lower: z.number().nullable(), exact_upper: z.number() },
  });
  const { rows } = readStatistics("sir.json", z.object({ rows: z.array(row).length(13) }));

  it.each(rows)("$observed observed, $predicted predicted, to 1e-9", (one) => {
    const { observed, predicted } = one;
    const midP = poissonLimits({ observed, level: 0.95, by: "mid-p" });
    const exact = poissonLimits({ observed, level: 0.95, by: "exact" });
    // The reference leaves the lower limit blank where nothing was observed; that of the count is 0.
    expectSame(midP.lower / predicted, one.midp_lower ?? 0);
    expectSame(midP.upper / predicted, one.midp_upper);
    expectSame(exact.lower / predicted, one.exact_lower ?? 0);
    expectSame(exact.upper / predicted, one.exact_upper);
    expectSame(midPTest({ observed, predicted }), one.p_midp);
    expectSame(observed / predicted, one.sir);
  });
});

describe("limits of a utilization ratio, statsmodels 0.13.5", () => {
  const row = z.object({ catheter_days: z.number(), patient_days: z.number(), wilson: pair, clopper_pearson: pair });
  const { rows } = readStatistics("proportion-limits.json", z.object({ rows: z.array(row).length(5) }));

  it.each(rows)(
    "$catheter_days of $patient_days, to 1e-9",
    ({ catheter_days, patient_days, wilson, clopper_pearson }) => {
      const part = { part: catheter_days, whole: patient_days, level: 0.95 };
      expectSame(figureOf(wilsonLimits(part).lower), wilson[0]);
      expectSame(figureOf(wilsonLimits(part).upper), wilson[1]);
      expectSame(figureOf(clopperPearsonLimits(part).lower), clopper_pearson[0]);
      expectSame(figureOf(clopperPearsonLimits(part).upper), clopper_pearson[1]);
    },
  );
});

describe("printed tables", () => {
  const pairs = z.record(z.string(), pair);
  const tables = readStatistics(
    "published-interval-tables.json",
    z.object({
      pearson_hartley_table40_95: z.object({ source: z.string(), rows: pairs }),
      count_25: z.object({ source: z.string(), 90: pair, 95: pair, 99: pair }),
      zero_upper: z.object({ source: z.string(), exact: z.number(), midp: z.number() }),
      rothman_boice_1979: z.object({ source: z.string(), midp: pair, byar: pair, exact_garwood: pair }),
    }),
  );
  const { pearson_hartley_table40_95: handbook, count_25: faq, zero_upper: zero, rothman_boice_1979: example } = tables;

  it(`${handbook.source}: 35 counts to the printed digits`, () => {
    const rows = Object.entries(handbook.rows);
    expect(rows).toHaveLength(35);
    for (const [count, [lower, upper]] of rows) {
      const found = poissonLimits({ observed: Number(count), level: 0.95, by: "exact" });
      // Printed with three significant figures below 10, otherwise with two decimals.
      expectPrinted(found.lower, lower, lower < 0.1 ? 4 : lower < 1 ? 3 : 2);
      expectPrinted(found.upper, upper, 2);
    }
  });

  it.each([90, 95, 99] as const)(`${faq.source}: 25 counted, %i%%`, (percent) => {
    const found = poissonLimits({ observed: 25, level: percent / 100, by: "exact" });
    expectPrinted(found.lower, faq[percent][0], 2);
    expectPrinted(found.upper, faq[percent][1], 2);
  });

  it(zero.source, () => {
    expectPrinted(poissonLimits({ observed: 0, level: 0.95, by: "exact" }).upper, zero.exact, 3);
    expectPrinted(poissonLimits({ observed: 0, level: 0.95, by: "mid-p" }).upper, zero.midp, 3);
  });

  it(example.source, () => {
    const limits = (by: LimitMethod) => poissonLimits({ observed: 4, level: 0.95, by });
    for (const [by, [lower, upper], decimals] of [
      // That package's mid-P limits stop at about five digits.
      ["mid-p", example.midp, 5],
      ["byar", example.byar, 6],
      ["exact", example.exact_garwood, 6],
    ] as const) {
      expectPrinted(limits(by).lower / 3.3, lower, decimals);
      expectPrinted(limits(by).upper / 3.3, upper, decimals);
    }
  });
});
