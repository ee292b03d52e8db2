import { expect, it } from "vitest";
import { falseAlarmNote, judged, markedPlaces, percent } from "../../../src/domain/comparison/control-notes.ts";

const alarms = {
  ...{ perYear: 2, months: 24, series: 10_000, seed: 5 },
  rates: { "outside-limits": 0.3, "long-run": 0, "few-crossings": 0.0297 },
  isUsed: { "outside-limits": false, "long-run": true, "few-crossings": true },
};

it("a rule with too many false alarms is not used, and the chart says so with the simulated shares", () => {
  const points = [1, 2, 9].map((value) => ({ value, lower: 0, upper: 5 }));
  const { signals, notes, median } = judged(points, alarms);
  expect([signals, median]).toEqual([[], null]);
  expect(notes).toEqual([
    "Runs are not judged: fewer than 10 points are off the median.",
    'The rule "outside limits" is not used: chance alone raises it more than twice as often as it is meant to.',
    falseAlarmNote(alarms),
  ]);
  expect(falseAlarmNote(alarms)).toBe(
    "False alarms by chance alone: outside limits 30.0%, long run 0.0%, few crossings 3.0% of charts (10,000 simulated charts of 24 months with 2 CAUTIs a year, seed 5).",
  );
  expect(percent(0.0029)).toBe("0.3%");
});

it("a point outside its limits is marked as such within a run too; few crossings mark nothing", () => {
  const found = [
    { rule: "outside-limits", sentence: "", points: [1] },
    { rule: "long-run", sentence: "", points: [0, 1] },
    { rule: "few-crossings", sentence: "", points: [0, 1, 2] },
  ] as const;
  expect([...markedPlaces(found, [3, 4, 5])]).toEqual([
    [3, "run"],
    [4, "outside"],
  ]);
});
