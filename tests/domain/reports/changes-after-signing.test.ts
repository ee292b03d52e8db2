import { expect, it } from "vitest";
import { changedRows, changedText, changesSheet } from "../../../src/domain/reports/changes-after-signing.ts";

const of = { wardId: 1, ward: "A", figure: "catheter_days", what: "Catheter-days" } as const;
const act = { entry: "catheter 7", who: "Rosa Example", when: "2026-11-02T09:30:00.000Z" };
const first = { ...act, what: "Recorded a removal", figures: [{ ...of, before: 5, after: 4 }] };
const second = { ...act, what: "Corrected a catheter", figures: [{ ...of, before: 4, after: 3 }] };
const differences = [{ ...of, signed: 5, now: 3 }];
const about = { facility: "Alder Bay Hospital", first: "2026-10-01", last: "2026-10-31", asOf: "", sources: [] };

it("says of each act what was signed and what is now, not what was between", () => {
  const rows = changedRows({ differences, changes: [second, first] });
  expect(rows.map(({ what, signed, present }) => [what, signed, present])).toEqual([
    ["Corrected a catheter", 5, 3],
    ["Recorded a removal", 5, 3],
  ]);
  expect(changesSheet(rows, about)?.rows[0]).toEqual([
    ...["A", "Catheter-days", 5, 3, "Corrected a catheter", "catheter 7", "Rosa Example", "2026-11-02T09:30:00.000Z"],
  ]);
  expect(changedText(rows.slice(0, 1), "A")).toBe(
    "Catheter-days: signed 5, present 3. Corrected a catheter, catheter 7, Rosa Example, 2026-11-02 09:30 UTC.",
  );
  expect([changedText(rows, "B"), changesSheet([], about)]).toEqual(["", null]);
});

it("leaves out no act and no difference: what was undone, was not compared, or has no act", () => {
  const words = (given: Parameters<typeof changedRows>[0]) =>
    changedRows(given).map(({ unit, figure, what, signed }) => [unit, figure, what, signed]);
  expect(words({ differences: [], changes: [first] })).toEqual([["", "As signed again", "Recorded a removal", null]]);
  expect(words({ differences: [], changes: [{ ...first, figures: [] }] })).toEqual([
    ["", "Not compared: the change touches many months", "Recorded a removal", null],
  ]);
  expect(words({ differences, changes: [] })).toEqual([
    ["A", "Catheter-days", "No single entry: see the differences", 5],
  ]);
});
