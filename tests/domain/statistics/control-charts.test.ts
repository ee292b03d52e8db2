import { describe, expect, it } from "vitest";
import { exactFunnelLimit, normalFunnelLimit } from "../../../src/domain/statistics/funnel-limits.ts";
import { gChart } from "../../../src/domain/statistics/g-chart.ts";
import { laneyUChart } from "../../../src/domain/statistics/laney-u-chart.ts";
import { overdispersion } from "../../../src/domain/statistics/overdispersion.ts";
import { poissonAtMost } from "../../../src/domain/statistics/poisson.ts";
import { quantileOfList } from "../../../src/domain/statistics/quantile-of-list.ts";
import { tChart } from "../../../src/domain/statistics/t-chart.ts";
import { uChart } from "../../../src/domain/statistics/u-chart.ts";

const impossible = expect.objectContaining({ code: "figure-impossible" });

describe("u chart", () => {
  it("exact limits leave no more than 0.00135 outside, and the next count would", () => {
    const { points } = uChart({
      periods: [
        { events: 4, days: 900 },
        { events: 2, days: 600 },
      ],
      sigmas: 3,
    });
    const mean = (6 / 1_500) * 900;
    const upper = Number(points[0]?.exactUpper) * 900;
    expect(upper).toBeCloseTo(Math.round(upper), 9);
    expect(1 - poissonAtMost(Math.round(upper), mean)).toBeLessThan(0.00135);
    expect(1 - poissonAtMost(Math.round(upper) - 1, mean)).toBeGreaterThan(0.00135);
  });

  it("a period without days has no rate, with the reason; without any there is no center", () => {
    const { points, center } = uChart({
      periods: [
        { events: 0, days: 0 },
        { events: 2, days: 600 },
      ],
      sigmas: 3,
    });
    expect(points[0]).toMatchObject({ rate: { value: null, reason: expect.stringContaining("no days") }, lower: null });
    expect(center.value).toBe(2 / 600);
    expect(uChart({ periods: [], sigmas: 3 }).center.value).toBeNull();
    const none = [{ events: 0, days: 30 }];
    expect(uChart({ periods: none, sigmas: 3 }).points[0]).toMatchObject({
      rate: { value: 0 },
      upper: 0,
      exactUpper: 0,
    });
    expect(laneyUChart({ periods: [...none, { events: 0, days: 0 }], sigmas: 3, movingRanges: "all" })).toEqual({
      spread: null,
      leftOut: 0,
      limits: [
        { lower: 0, upper: 0 },
        { lower: null, upper: null },
      ],
    });
    const one = [
      { events: 2, days: 0 },
      { events: 1, days: 30 },
      { events: 3, days: 40 },
    ];
    expect(laneyUChart({ periods: one, sigmas: 3, movingRanges: "all" }).limits[0]).toEqual({
      lower: null,
      upper: null,
    });
  });

  it("is refused for figures that cannot be", () => {
    for (const period of [
      { events: -1, days: 3 },
      { events: 0.5, days: 3 },
      { events: 1, days: Number.NaN },
    ]) {
      expect(() => uChart({ periods: [period], sigmas: 3 })).toThrow(impossible);
    }
    expect(() => uChart({ periods: [], sigmas: 0 })).toThrow(impossible);
  });
});

describe("g and t charts", () => {
  it("need two gaps, and refuse gaps that cannot be", () => {
    expect(gChart([40])).toEqual({ value: null, reason: "Fewer than two gaps between infections make no chart." });
    expect(tChart([])).toEqual({ value: null, reason: "Fewer than two times between infections make no chart." });
    expect(() => gChart([3, -1])).toThrow(impossible);
    expect(() => gChart([3, 1.5])).toThrow(impossible);
    expect(() => tChart([3, Number.NaN])).toThrow(impossible);
  });

  it("an infection on every catheter-day has gaps of 0 and limits of 0", () => {
    expect(gChart([0, 0, 0])).toMatchObject({ probability: 1, median: 0, lower: 0, middle: 0, upper: 0 });
  });
});

describe("funnel", () => {
  it("refuses a ward without days or a target of 0, and two wards are the fewest that can differ", () => {
    const place = { target: 0.003, denominator: 0, probability: 0.025 };
    expect(() => exactFunnelLimit(place)).toThrow(impossible);
    expect(() => normalFunnelLimit(place)).toThrow(impossible);
    expect(() => exactFunnelLimit({ ...place, target: 0, denominator: 5 })).toThrow(impossible);
    const units = [{ observed: 2, denominator: 900 }];
    expect(overdispersion({ units, target: 0.003, scale: "none" })).toEqual({
      value: null,
      reason: "Fewer than two wards cannot differ from each other.",
    });
    const wrong = [...units, { observed: -2, denominator: 900 }];
    expect(() => overdispersion({ units: wrong, target: 0.003, scale: "none" })).toThrow(impossible);
    expect(() => quantileOfList([], 0.5)).toThrow("an empty list");
  });

  it("narrows with the days", () => {
    const width = (denominator: number) => {
      const [low, high] = [0.025, 0.975].map((p) => exactFunnelLimit({ target: 0.004, denominator, probability: p }));
      return Number(high?.interpolated) - Number(low?.interpolated);
    };
    expect([500, 1_000, 4_000].map(width)).toEqual([4_000, 1_000, 500].map(width).toReversed());
    expect(width(500)).toBeGreaterThan(width(1_000));
    expect(width(1_000)).toBeGreaterThan(width(4_000));
  });
});

describe("Laney's chart", () => {
  // Equal days, so z moves as the counts do: |moves| of 1, 1, 1, 1, 1, 1, 1, 11, 1, 1, 1 over their standard error.
  const counts = [5, 6, 5, 6, 5, 6, 5, 6, 17, 16, 17, 16];
  const periods = counts.map((events) => ({ events, days: 300 }));
  const chart = (movingRanges: "all" | "screened") => laneyUChart({ periods, sigmas: 3, movingRanges });
  const error = Math.sqrt(110 / 12);

  it("uses every moving range, or leaves out those of 3.267 times their mean or more, as it is asked", () => {
    // 10 moves of 1 and one of 11: mean 21 / 11; 11 is over 3.267 times that.
    expect(chart("all")).toMatchObject({ spread: expect.closeTo(21 / 11 / error / 1.128, 12), leftOut: 0 });
    expect(chart("screened")).toMatchObject({ spread: expect.closeTo(1 / error / 1.128, 12), leftOut: 1 });
    const even = periods.map(({ days }) => ({ events: 4, days }));
    expect(laneyUChart({ periods: even, sigmas: 3, movingRanges: "screened" })).toMatchObject({
      spread: 0,
      leftOut: 0,
    });
  });
});
