import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { binomialDensity } from "../../../src/domain/statistics/binomial.ts";
import { quantileOfBinomialHalf } from "../../../src/domain/statistics/binomial-half.ts";
import { gammaQuantile } from "../../../src/domain/statistics/gamma-quantile.ts";
import { incompleteBeta } from "../../../src/domain/statistics/incomplete-beta.ts";
import { incompleteGamma } from "../../../src/domain/statistics/incomplete-gamma.ts";
import { logGamma } from "../../../src/domain/statistics/log-gamma.ts";
import { normalAbove, normalUpperQuantile } from "../../../src/domain/statistics/normal.ts";
import { poissonParts } from "../../../src/domain/statistics/poisson.ts";
import { poissonQuantile } from "../../../src/domain/statistics/poisson-quantile.ts";
import { solveRising } from "../../../src/domain/statistics/solve-rising.ts";
import { expectSame, readStatistics } from "../../reference/read-statistics.ts";

const list = z.array(z.array(z.number())).nonempty();
const reference = readStatistics(
  "special-functions.json",
  z.object({
    ...{ source: z.string(), log_gamma: list, incomplete_gamma: list },
    ...{ upper_gamma_quantile: list, incomplete_beta: list, normal_upper_quantile: list },
  }),
);
const coin = readStatistics("comparisons.json", z.object({ coin_5th_percentile: list }));
/** A column of a row. */
const at = (row: number[], column: number) => row[column] ?? Number.NaN;

describe(`special functions against ${reference.source}`, () => {
  it("ln of the gamma function, 300 random arguments, to 1e-14", () => {
    for (const row of reference.log_gamma) {
      const off = Math.abs(logGamma(at(row, 0)) - at(row, 1)) / Math.max(1, Math.abs(at(row, 1)));
      expect(off).toBeLessThan(1e-14);
    }
  });

  it("incomplete gamma function, 300 random arguments up to a shape of 60,000, both parts to 1e-12", () => {
    for (const row of reference.incomplete_gamma) {
      const { below, above } = incompleteGamma(at(row, 0), at(row, 1));
      expectSame(below, at(row, 2), 1e-12);
      expectSame(above, at(row, 3), 1e-12);
    }
  });

  it("quantile of the gamma distribution, 120 random arguments, to 1e-12", () => {
    for (const row of reference.upper_gamma_quantile) {
      expectSame(gammaQuantile(at(row, 0), at(row, 1), "above"), at(row, 2), 1e-12);
    }
  });

  it("incomplete beta function, 200 random arguments, both parts to 1e-12", () => {
    for (const row of reference.incomplete_beta) {
      const p = at(row, 2);
      const { below, above } = incompleteBeta(at(row, 0), at(row, 1), { p, q: 1 - p });
      expectSame(below, at(row, 3), 1e-12);
      expectSame(above, at(row, 4), 1e-12);
    }
  });

  it("normal quantile to 1e-14 and its tail to 1e-12, down to 1e-300", () => {
    for (const row of reference.normal_upper_quantile) {
      expectSame(normalUpperQuantile(at(row, 0)), at(row, 1), 1e-14);
      expectSame(normalAbove(at(row, 1)), at(row, 0), 1e-12);
    }
  });

  it("5th percentile of a fair coin thrown 1 to 300 times, by exact fractions", () => {
    for (const [n, count] of coin.coin_5th_percentile) {
      expect(quantileOfBinomialHalf(0.05, Number(n))).toBe(count);
    }
    expect(quantileOfBinomialHalf(0.05, 0)).toBe(0);
  });
});

describe("special functions keep their laws", () => {
  it("the three parts of a Poisson distribution add up to 1", () => {
    fc.assert(
      fc.property(fc.nat(5_000), fc.double({ min: 0, max: 6_000, noNaN: true }), (count, mean) => {
        const { fewer, same, more } = poissonParts(count, mean);
        expect(Math.min(fewer, same, more)).toBeGreaterThanOrEqual(0);
        expect(Math.abs(fewer + same + more - 1)).toBeLessThan(1e-11);
      }),
    );
  });

  it("binomial probabilities add up to 1, also at the ends of p", () => {
    for (const p of [0, 1e-12, 0.3, 0.5, 1 - 1e-12, 1]) {
      let sum = 0;
      for (let x = -1; x <= 41; x++) sum += binomialDensity(x, 40, { p, q: 1 - p });
      expect(Math.abs(sum - 1)).toBeLessThan(1e-12);
    }
  });

  it("the Poisson quantile is the smallest count that reaches its probability", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 300, noNaN: true }),
        fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }),
        (mean, probability) => {
          const count = poissonQuantile(probability, mean);
          const { fewer, same } = poissonParts(count, mean);
          expect(fewer + same).toBeGreaterThan(probability - 1e-12);
          expect(fewer).toBeLessThan(probability + 1e-12);
        },
      ),
    );
  });

  it("a zero far from the start is found, and one that is not there is said not to be", () => {
    expect(solveRising((t) => ({ value: t - 5_000, slope: 0 }), 0)).toBeCloseTo(5_000, 6);
    expect(() => solveRising(() => ({ value: 1, slope: 0 }), 0)).toThrow("no zero was found from 0");
  });

  it("both ends of the incomplete functions are whole", () => {
    expect(incompleteGamma(3, 0)).toEqual({ below: 0, above: 1 });
    expect(incompleteBeta(3, 2, { p: 0, q: 1 })).toEqual({ below: 0, above: 1 });
    expect(incompleteBeta(3, 2, { p: 1, q: 0 })).toEqual({ below: 1, above: 0 });
  });
});
