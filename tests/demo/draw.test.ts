import { describe, expect, it } from "vitest";
import { type Draw, drawFrom } from "../../src/demo/draw.ts";

const draws = 20_000;

/** The mean and the variance of many draws of one kind. */
function momentsOf(next: (draw: Draw) => number): { mean: number; variance: number } {
  const draw = drawFrom(11);
  const values = Array.from({ length: draws }, () => next(draw));
  const mean = values.reduce((a, b) => a + b, 0) / draws;
  return { mean, variance: values.reduce((a, b) => a + (b - mean) ** 2, 0) / draws };
}

describe("seeded draws", () => {
  it("are the same for the same seed and differ for another", () => {
    const some = (seed: number) => {
      const draw = drawFrom(seed);
      return [draw.fraction(), draw.wait(3), draw.count(2), draw.whole(1, 1000), draw.chance(0.5)];
    };
    expect(some(1)).toEqual(some(1));
    expect(some(1)).not.toEqual(some(2));
  });

  // Means and variances: uniform 1/2 and 1/12; exponential m and m²; Poisson m and m (textbook, from memory).
  it("have the mean and the spread of their distributions", () => {
    const uniform = momentsOf((draw) => draw.fraction());
    expect(uniform.mean).toBeCloseTo(1 / 2, 1);
    expect(uniform.variance).toBeCloseTo(1 / 12, 2);
    const wait = momentsOf((draw) => draw.wait(4));
    expect(wait.mean / 4).toBeCloseTo(1, 1);
    expect(wait.variance / 16).toBeCloseTo(1, 0);
    const count = momentsOf((draw) => draw.count(3));
    expect(count.mean / 3).toBeCloseTo(1, 1);
    expect(count.variance / 3).toBeCloseTo(1, 1);
    expect(momentsOf((draw) => Number(draw.chance(0.2))).mean).toBeCloseTo(0.2, 1);
  });

  it("of whole numbers reach both ends and nothing beyond", () => {
    const draw = drawFrom(5);
    const values = new Set(Array.from({ length: 500 }, () => draw.whole(3, 6)));
    expect([...values].sort()).toEqual([3, 4, 5, 6]);
  });

  it("of a mean of zero count nothing", () => {
    const draw = drawFrom(5);
    expect(Array.from({ length: 100 }, () => draw.count(0)).every((n) => n === 0)).toBe(true);
  });
});
