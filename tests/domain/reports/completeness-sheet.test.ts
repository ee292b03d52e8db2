import { expect, it } from "vitest";
import type { CompletenessItem } from "../../../shared/month-report.ts";
import { completenessSheet, completenessText, reasonsOf } from "../../../src/domain/reports/completeness-sheet.ts";
import { monthFigures } from "../../../src/domain/reports/month-figures.ts";
import { monthFiguresSheet } from "../../../src/domain/reports/month-figures-sheet.ts";
import { figureFacts } from "./figure-facts.ts";

const dropped: CompletenessItem = {
  ...{ kind: "dropped-lines", ward: null, count: 1, sentence: "1 rejected line was dropped." },
  lines: [
    {
      ...{ importId: 7, file: "moves.csv", line: 2, wards: ["A"], dated: true, reason: "Sent twice" },
      ...{ by: "Rosa Example", at: "2026-11-02T00:00:00.000Z" },
    },
  ],
};
const waiting: CompletenessItem = {
  ...{ kind: "cultures-waiting", ward: "A", count: 2, sentence: "2 positive cultures wait.", lines: [] },
};
const reason = "Dropped: moves.csv line 2 of import 7: Sent twice (Rosa Example, 2026-11-02 00:00 UTC)";

it("has a row for each item and for each dropped line with its reason; older months have none", () => {
  const report = monthFigures(figureFacts({ A: {} }), [waiting, dropped]);
  expect(completenessSheet(report)?.rows).toEqual([
    ["A", "cultures-waiting", 2, "to resolve before signing", "2 positive cultures wait."],
    ["", "dropped-lines", 1, "does not block signing", "1 rejected line was dropped."],
    ["", "", null, "", reason],
  ]);
  expect(completenessSheet(monthFigures(figureFacts({ A: {} })))).toBeNull();
  // The rows of the CSV file of figures hold the same.
  const rows = monthFiguresSheet(report).rows.slice(-3);
  expect(rows.map((row) => [row[0], row[2], row[3], row[4], row[12]])).toEqual([
    ["A", "cultures-waiting", "2 positive cultures wait.", 2, null],
    ["", "dropped-lines", "1 rejected line was dropped.", 1, null],
    ["", "dropped-lines", "Dropped line", null, reason],
  ]);
});

it("stands in one text of a unit, or of none alone", () => {
  const report = { completeness: [waiting, dropped] };
  expect(completenessText(report, "A")).toBe("2 positive cultures wait.");
  expect(completenessText(report, null)).toBe(`1 rejected line was dropped. ${reason}`);
  expect(completenessText({ completeness: null }, "A")).toBe("");
  expect(reasonsOf(waiting)).toEqual([]);
});
