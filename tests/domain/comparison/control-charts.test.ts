import { describe, expect, it } from "vitest";
import { chartsOf } from "../../../src/domain/comparison/compare-wards.ts";
import type { ComparedWard } from "../../../src/domain/comparison/comparison-facts.ts";
import { byId, facts, months, ward } from "./compared-facts.ts";

describe("control charts", () => {
  it("mark a month outside its limits, and say in words what a rule found", () => {
    const steady = ward("5E", [[1, 300]]);
    const jump = { ...steady, months: steady.months.map((one, n) => (n === 6 ? { ...one, infections: 14 } : one)) };
    const control = byId(chartsOf(facts([jump, ward("5W", [[1, 300]])], { chosen: jump })), "months");
    if (control.kind !== "control") throw new Error(control.kind);
    expect(control.input.title).toContain("5E");
    expect(control.input.points.map(({ signal }) => signal)).toEqual(
      months.map((one) => (one === "2026-07" ? "outside" : null)),
    );
    expect(control.notes[0]).toContain("outside");
    // 25 CAUTIs in 12 months: the simulation of 12 months with 20 a year is the nearest.
    expect(control.notes.at(-2)).toMatch(
      /^False alarms by chance alone: outside limits 0\.3%, long run 0\.0%, few crossings 1\.3% of charts \(10,000 simulated charts of 12 months with 20 CAUTIs a year, seed \d+\)\.$/,
    );
    // Eleven equal months: no run of them means anything.
    expect(control.notes).toContain("Runs are not judged: more than half of the points have the same value.");
    expect(control.input.median).toBeNull();
  });

  it("months of zero are no alarm, neither where CAUTIs are rare nor where many are expected", () => {
    const signalsOf = (one: ComparedWard) => {
      const control = byId(chartsOf(facts([one, ward("5W", [[1, 300]])], { chosen: one })), "months");
      if (control.kind !== "control") throw new Error(control.kind);
      return control.input.points.flatMap(({ signal }) => signal ?? []);
    };
    const rare = ward("5E", [
      [1, 300],
      [0, 310],
      [0, 290],
      [0, 305],
      [0, 295],
      [0, 300],
    ]);
    expect(signalsOf(rare)).toEqual([]);
    const many = ward("5E", [
      [12, 300],
      [11, 301],
      [13, 302],
      [12, 303],
      [0, 304],
      [14, 305],
    ]);
    expect(signalsOf(many)).toEqual([]);
  });

  it("a unit's Laney limits are drawn where chance alone seldom leaves them, by each treatment of outlying moves", () => {
    const laneyOf = (one: ComparedWard) =>
      chartsOf(facts([one, ward("5W", [[1, 300]])], { chosen: one })).filter(({ input }) =>
        input.id.startsWith("laney"),
      );
    const [rare] = laneyOf(ward("5E", [[1, 300], ...Array(5).fill([0, 300])]));
    expect([rare?.kind, rare?.input.sentence]).toEqual([
      "absent",
      "Not drawn: with so few CAUTIs, chance alone puts a month outside Laney limits in 51.7% of charts (simulated).",
    ]);
    const [all, ...none] = laneyOf(
      ward("5E", [
        [5, 300],
        [6, 300],
        [4, 300],
        [6, 300],
      ]),
    );
    expect(none).toEqual([]);
    expect(all?.notes).toContain("Limits use all moving ranges (Laney, Quality Engineering 2002;14:531).");
    expect(all?.notes).toContain(
      "No moving range is outlying, so leaving outlying ones out (Nelson 1982) gives the same limits.",
    );
    const jump = [5, 6, 5, 6, 5, 6, 5, 6, 25, 24, 25, 24].map((count) => [count, 300] as const);
    const both = laneyOf(ward("5E", jump));
    expect(both.map(({ input }) => input.id)).toEqual(["laney", "laney-screened"]);
    expect(both[1]?.notes.join(" ")).toContain("3.267 times their mean or more are left out (Nelson");
    const uppers = both.map((chart) => (chart.kind === "control" ? (chart.input.points[0]?.upper ?? 0) : 0));
    expect(uppers[1]).toBeLessThan(uppers[0] ?? 0);
  });
});
