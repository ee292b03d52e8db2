import fc from "fast-check";
import { expect, it } from "vitest";
import { chanceOutside } from "../../../src/domain/statistics/chance-outside.ts";
import { exactFunnelLimit } from "../../../src/domain/statistics/funnel-limits.ts";
import { poissonDensity } from "../../../src/domain/statistics/poisson-density.ts";

it("is the sum of the probabilities of the counts outside, and near twice the tail for many events alone", () => {
  // 0.5 expected: P(X >= 2) = 1 - 1.5 exp(-0.5).
  const place = { target: 0.5, denominator: 1, tail: 0.025 };
  expect(chanceOutside(place)).toBeCloseTo(1 - 1.5 * Math.exp(-0.5), 12);
  expect(chanceOutside({ target: 1, denominator: 40_000, tail: 0.025 })).toBeCloseTo(0.05, 3);
  fc.assert(
    fc.property(fc.double({ min: 0.05, max: 60, noNaN: true }), fc.constantFrom(0.001, 0.025), (denominator, tail) => {
      const limit = (probability: number) => exactFunnelLimit({ target: 1, denominator, probability }).interpolated;
      const [lower, upper] = [limit(tail), limit(1 - tail)];
      let sum = 0;
      for (let count = 0; count < 200; count++) {
        const rate = count / denominator;
        if (rate < lower * (1 - 1e-12) || rate > upper * (1 + 1e-12)) sum += poissonDensity(count, denominator);
      }
      expect(chanceOutside({ target: 1, denominator, tail })).toBeCloseTo(sum, 9);
    }),
  );
});
