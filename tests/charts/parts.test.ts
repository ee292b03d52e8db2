import fc from "fast-check";
import { expect, it } from "vitest";
import { figureText, tickText } from "../../src/charts/figure-text.ts";
import { thinned } from "../../src/charts/frame.ts";
import { linearScale, logRange, logScale, logTicks, ticksTo } from "../../src/charts/scale.ts";
import { spreadLabels } from "../../src/charts/spread-labels.ts";
import { place, svgNode } from "../../src/charts/svg-node.ts";

it("figures are written as the United States write them", () => {
  const written = [
    figureText(1_234_567.891, 2),
    figureText(-0.04, 1),
    figureText(-1_000, 0),
    figureText(999, 0),
    tickText(0.25),
  ];
  expect(written).toEqual(["1,234,567.89", "0.0", "-1,000", "999", "0.25"]);
});

it("ticks are round, evenly apart, begin at 0 and reach the largest value, with about the steps asked for", () => {
  expect([ticksTo(7.9, 5), ticksTo(0.72, 5), ticksTo(0, 5), ticksTo(2_410, 6)]).toEqual([
    ...[
      [0, 2, 4, 6, 8],
      [0, 0.2, 0.4, 0.6, 0.8],
      [0, 1],
    ],
    [0, 500, 1_000, 1_500, 2_000, 2_500],
  ]);
  fc.assert(
    fc.property(fc.double({ min: 1e-6, max: 1e6, noNaN: true }), fc.integer({ min: 2, max: 10 }), (most, steps) => {
      const ticks = ticksTo(most, steps);
      expect(ticks[0]).toBe(0);
      expect(ticks.at(-1)).toBeGreaterThanOrEqual(most * (1 - 1e-6));
      expect(ticks.length).toBeLessThanOrEqual(steps + 2);
    }),
  );
});

it("scales put the ends of values on the ends of places; a logarithmic one puts twice and half equally far", () => {
  const straight = linearScale([0, 8], [100, 20]);
  expect([straight(0), straight(8), straight(4)]).toEqual([100, 20, 60]);
  expect(linearScale([3, 3], [0, 10])(3)).toBe(5);
  const log = logScale([0.25, 4], [0, 400]);
  expect([log(0.25), log(0.5), log(1), log(2), log(4)].map(Math.round)).toEqual([0, 100, 200, 300, 400]);
  expect(logTicks([0.1, 4])).toEqual([0.1, 0.2, 0.5, 1, 2]);
  expect([logRange(0.3, 4), logRange(1, 1)]).toEqual([
    [0.2, 5],
    [0.5, 2],
  ]);
});

it("labels keep their distance, their order and the room they are given", () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: 0, max: 300, noNaN: true }), { maxLength: 10 }), (heights) => {
      const placed = spreadLabels(heights, { gap: 15, low: 0, high: 300 });
      const sorted = placed.toSorted((a, b) => a - b);
      for (const [at, y] of sorted.entries()) {
        expect(y).toBeGreaterThanOrEqual(-1e-9);
        expect(y).toBeLessThanOrEqual(300 + 1e-9);
        if (at > 0) expect(y - (sorted[at - 1] ?? 0)).toBeGreaterThanOrEqual(15 - 1e-9);
      }
      for (const [a, one] of heights.entries()) {
        for (const [b, other] of heights.entries())
          if (one < other) expect(placed[a]).toBeLessThan(placed[b] ?? Number.NaN);
      }
    }),
  );
});

it("long rows of labels are thinned evenly, and a place that is no number is a bug", () => {
  expect(thinned(["a", "b", "c", "d", "e"], 3).map(({ label }) => label)).toEqual(["a", "c", "e"]);
  expect([place(1 / 3), place(-0.001)]).toEqual(["0.33", "0"]);
  expect(() => place(Number.NaN)).toThrow("a drawing has no place NaN");
  expect(svgNode("g", { x: 2, y: undefined }).attributes).toEqual({ x: "2" });
});
