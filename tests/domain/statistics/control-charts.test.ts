import { describe, expect, it } from "vitest";
import { exactFunnelLimit, normalFunnelLimit } from "../../../src/domain/statistics/funnel-limits.ts";
import { gChart } from "../../../src/domain/statistics/g-chart.ts";
import { laneyUChart } from "../../../src/domain/statistics/laney-u-chart.ts";
import { overdispersion } from "../../../src/domain/statistics/overdispersion.ts";
import { poissonAtMost } from "../../../src/domain/statistics/poisson.ts";
import { quantileOfList } from "../../../src/domain/statistics/quantile-of-list.ts";
import { type ChartPoint, runSignals } from "../../../src/domain/statistics/run-rules.ts";
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
    expect(1 - poissonAtMost(Math.ceil(upper), mean)).toBeLessThan(0.00135);
    expect(1 - poissonAtMost(Math.floor(upper) - 1, mean)).toBeGreaterThan(0.00135);
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
    expect(laneyUChart({ periods: [...none, { events: 0, days: 0 }], sigmas: 3 })).toEqual({
      spread: null,
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
    expect(laneyUChart({ periods: one, sigmas: 3 }).limits[0]).toEqual({ lower: null, upper: null });
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

describe("run rules", () => {
  const series = (text: string): ChartPoint[] =>
    [...text].map((sign) => ({
      value: { "+": 1, "-": -1, "0": 0, "!": 9 }[sign] ?? 0,
      center: 0,
      lower: -3,
      upper: 3,
    }));
  const rules = (text: string) => runSignals(series(text)).map(({ rule }) => rule);

  // Limits of Anhoej and Olesen for 12 useful points: a run of at most 7, at least 3 crossings; for 24: 8 and 8.
  it.each([
    ["+-+-+-+-+-+-", []],
    ["+++++++-+-+-", []],
    ["++++++++-+-+", ["long-run"]],
    ["++++0++++-+-+", ["long-run"]],
    ["++++-----+++", ["few-crossings"]],
    ["+++------+++".repeat(2), ["few-crossings"]],
    ["++++++++++++", ["long-run", "few-crossings"]],
    ["+-+-+!+-+-+-", ["outside-limits"]],
    ["+++++++++", []],
    ["0000000000000", []],
  ] as const)("%s gives %j", (text, expected) => {
    expect(rules(text)).toEqual(expected);
  });

  it("names the points and says what is rare, in words", () => {
    expect(runSignals(series("++++++++-+-+"))).toEqual([
      {
        rule: "long-run",
        sentence:
          "8 points in a row lie on one side of the center line; by chance more than 7 are rare in a series of 12.",
        points: [0, 1, 2, 3, 4, 5, 6, 7],
      },
    ]);
    expect(runSignals(series("!!"))).toEqual([
      { rule: "outside-limits", sentence: "2 points lie outside their limits.", points: [0, 1] },
    ]);
    expect(runSignals([{ value: 9, center: 0, lower: null, upper: null }])).toEqual([]);
  });
});
