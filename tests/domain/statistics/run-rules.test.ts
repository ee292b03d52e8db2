import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type ChartPoint, runSignals } from "../../../src/domain/statistics/run-rules.ts";

/** Points above, below and on their median of 0, and far outside the limits; an even number of + and - keeps it there. */
const series = (text: string): ChartPoint[] =>
  [...text].map((sign) => ({ value: { "+": 1, "-": -1, "0": 0, "!": 9 }[sign] ?? 0, lower: -3, upper: 3 }));
const values = (list: readonly number[]): ChartPoint[] => list.map((value) => ({ value, lower: null, upper: null }));
const rules = (points: readonly ChartPoint[]) => runSignals(points).signals.map(({ rule }) => rule);

describe("run rules", () => {
  // Critical values of Anhoej and Olesen for 12 useful points: a run of at most 7, at least 3 crossings; for 14: 7 and
  // 4; for 16: 7 and 4; for 20: 7 and 6; for 24: 8 and 8.
  it.each([
    ["+-+-+-+-+-+-", []],
    ["+++++++-------", ["few-crossings"]],
    ["++++++++--------", ["long-run", "few-crossings"]],
    ["-+-+++++++++-+-+--------", ["long-run"]],
    ["-+-++++0+++++-+-+--------", ["long-run"]],
    ["++++++------".repeat(2), ["few-crossings"]],
    ["++++++------", ["few-crossings"]],
    ["+-+-+!-+-+-+--", ["outside-limits"]],
    ["++++----", []],
  ] as const)("%s gives %j", (text, expected) => {
    expect(rules(series(text))).toEqual(expected);
  });

  it("judge against the median: one very high month moves the mean over all others, and is no run of them", () => {
    const low = [1, 2, 1.5, 2.5, 1.2, 2.2, 1.1, 2.1, 1.3, 2.3, 1.4];
    expect(rules(values([...low, 400]))).toEqual([]);
    expect(runSignals(values([...low, 400])).median).toBe(1.75);
  });

  it("leave runs off where more than half of the points are equal, and say so: months of zero are no run", () => {
    const zeros = [0, 0, 0, 0, 0, 0, 0, 3, 2, 0, 0, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 0, 0, 4];
    expect(runSignals(values(zeros))).toEqual({
      signals: [],
      runsLeftOff: "Runs are not judged: more than half of the points have the same value.",
      median: null,
    });
    expect(runSignals(values([1, 2, 3])).runsLeftOff).toBe(
      "Runs are not judged: fewer than 10 points are off the median.",
    );
    expect(runSignals([])).toEqual({ signals: [], runsLeftOff: expect.any(String), median: null });
  });

  it("does not change when all values are scaled or moved, nor when time runs backwards", () => {
    const list = fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 10, maxLength: 60 });
    fc.assert(
      fc.property(list, (one) => {
        const found = rules(values(one));
        expect(rules(values(one.map((value) => value * 4 + 8)))).toEqual(found);
        expect(rules(values(one.toReversed()))).toEqual(found);
      }),
    );
  });

  it("names the points and says what is rare, in words", () => {
    expect(runSignals(series("-+-+++++++++-+-+--------")).signals).toEqual([
      {
        rule: "long-run",
        sentence: "9 points in a row are on one side of the median; more than 8 of 24 are rare by chance.",
        points: [3, 4, 5, 6, 7, 8, 9, 10, 11],
      },
    ]);
    expect(runSignals(series("+++++++-------")).signals[0]?.sentence).toBe(
      "The line crosses the median once; fewer than 4 for 14 points are rare by chance.",
    );
    const outside = (text: string) =>
      runSignals(series(text)).signals.map(({ sentence, points }) => [sentence, points]);
    expect(outside("!!-")).toEqual([["2 points are outside their limits.", [0, 1]]]);
    expect(outside("!+-")).toEqual([["1 point is outside its limits.", [0]]]);
  });
});
