import jstat from "jstat";
import { xoroshiro128plus } from "pure-rand/generator/xoroshiro128plus";
import { describe, expect, it } from "vitest";
import { clopperPearsonLimits } from "../../src/domain/statistics/clopper-pearson-limits.ts";
import { exactLimits } from "../../src/domain/statistics/exact-limits.ts";
import { midPLimits } from "../../src/domain/statistics/mid-p-limits.ts";
import { midPTest } from "../../src/domain/statistics/mid-p-test.ts";
import { figureOf } from "./read-statistics.ts";

const { gamma, beta } = jstat.jStat;
const seed = 20_260_729;

/** 10,000 random draws of numbers from 0 to 1, so many each. */
function* draws(each: number): Generator<number[]> {
  const generator = xoroshiro128plus(seed);
  const next = () => (generator.next() >>> 0) / 2 ** 32;
  for (let i = 0; i < 10_000; i++) yield Array.from({ length: each }, next);
}

/** The largest relative difference over all draws. */
function worst(each: number, compare: (draw: number[]) => [ours: number, theirs: number][]): number {
  let most = 0;
  for (const draw of draws(each)) {
    for (const [ours, theirs] of compare(draw)) most = Math.max(most, Math.abs(ours / theirs - 1));
  }
  return most;
}

const level = (draw: number | undefined) => 0.8 + 0.199 * (draw ?? 0);
const count = (draw: number | undefined, most: number) => Math.floor((draw ?? 0) ** 3 * most);

/** Poisson tails with half the count, by its gamma distribution: its own Poisson functions overflow from 150 on. */
function tailsOf(observed: number, mean: number): { fewer: number; more: number } {
  const half = gamma.pdf(mean, observed + 1, 1) / 2;
  return { fewer: 1 - gamma.cdf(mean, observed, 1) + half, more: gamma.cdf(mean, observed + 1, 1) + half };
}

describe(`jstat 1.9.6 on 10,000 random inputs each, seed ${seed}`, () => {
  it("exact limits are its gamma quantiles, counts to 3,000, to 1e-9", () => {
    const off = worst(2, ([a, b]) => {
      const [observed, one] = [1 + count(a, 3_000), level(b)];
      const found = exactLimits({ observed, level: one });
      const tail = (1 - one) / 2;
      return [
        [found.lower, gamma.inv(tail, observed, 1)],
        [found.upper, gamma.inv(1 - tail, observed + 1, 1)],
      ];
    });
    expect(off).toBeLessThan(1e-9);
  });

  it("at mid-P limits its Poisson tails with half the count are (1 - level) / 2, counts to 3,000, to 1e-9", () => {
    const off = worst(2, ([a, b]) => {
      const [observed, one] = [1 + count(a, 3_000), level(b)];
      const { lower, upper } = midPLimits({ observed, level: one });
      return [
        [(1 - one) / 2, tailsOf(observed, lower).more],
        [(1 - one) / 2, tailsOf(observed, upper).fewer],
      ];
    });
    expect(off).toBeLessThan(1e-9);
  });

  it("mid-P values are those of its Poisson tails, to 1e-9", () => {
    const off = worst(2, ([a, b]) => {
      const observed = 1 + count(a, 3_000);
      const predicted = Math.max(0.05, observed + 3 * (2 * (b ?? 0) - 1) * Math.sqrt(observed));
      const { fewer, more } = tailsOf(observed, predicted);
      return [[midPTest({ observed, predicted }), Math.min(1, 2 * Math.min(fewer, more))]];
    });
    expect(off).toBeLessThan(1e-9);
  });

  it("exact limits of a proportion are its beta quantiles, to 1e-7", () => {
    const off = worst(3, ([a, b, c]) => {
      const whole = 3 + count(a, 2_000);
      const part = 1 + Math.floor((b ?? 0) * (whole - 1));
      const one = level(c);
      const found = clopperPearsonLimits({ part, whole, level: one });
      const lower: [number, number] = [figureOf(found.lower), beta.inv((1 - one) / 2, part, whole - part + 1)];
      if (part === whole) return [lower];
      return [lower, [figureOf(found.upper), beta.inv(1 - (1 - one) / 2, part + 1, whole - part)]];
    });
    // Its own steps stop at 1e-8 of the quantile.
    expect(off).toBeLessThan(1e-7);
  });
});
