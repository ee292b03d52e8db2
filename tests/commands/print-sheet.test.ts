import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import type { Sheet } from "../../shared/sheet.ts";
import { sheetText } from "../../src/commands/print-sheet.ts";

const sheet: Sheet = {
  id: "month",
  title: "Days",
  period: "2026-10-01 to 2026-10-31",
  asOf: "2026-11-03T08:00:00.000Z",
  sources: ["A manual"],
  columns: [
    { key: "ward", label: "Ward", kind: "text", unit: null },
    { key: "from", label: "From", kind: "day", unit: null },
    { key: "patient_days", label: "Patient-days", kind: "whole", unit: "patient-days" },
    { key: "utilization", label: "Ratio", kind: "ratio", unit: null },
    { key: "note", label: "Note", kind: "text", unit: null },
  ],
  rows: [
    ["3E", "2026-10-01", 1234, 1 / 3, "a, b"],
    ["ICU", "2026-10-02", null, null, ""],
  ],
  total: ["All wards", "", 1234, 0.5, ""],
  cautions: ["First caution.", "Second caution."],
};

describe("a sheet as a table", () => {
  it("has numbers to the right, words to the left, two decimals for ratios and no blanks at the end of lines", () => {
    expect(sheetText(sheet, "table").split("\n")).toEqual([
      "Days, 2026-10-01 to 2026-10-31",
      "",
      "Ward       From        Patient-days  Ratio  Note",
      "---------  ----------  ------------  -----  ----",
      "3E         2026-10-01          1234   0.33  a, b",
      "ICU        2026-10-02       missing      -",
      "---------  ----------  ------------  -----  ----",
      "All wards                      1234   0.50",
      "",
      "First caution.",
      "Second caution.",
      "",
    ]);
  });

  it("has no line above a total that is not there, and shows a sheet without rows", () => {
    const text = sheetText({ ...sheet, rows: [], total: null, cautions: [] }, "table");
    expect(text).toBe(
      "Days, 2026-10-01 to 2026-10-31\n\nWard  From  Patient-days  Ratio  Note\n----  ----  ------------  -----  ----\n\n",
    );
  });
});

describe("a sheet as CSV", () => {
  it("has the keys of the columns and the rows alone; what is missing is empty, and numbers are not rounded", () => {
    expect(sheetText(sheet, "csv")).toBe(
      `ward,from,patient_days,utilization,note\n3E,2026-10-01,1234,${1 / 3},"a, b"\nICU,2026-10-02,,,\n`,
    );
  });

  it("makes harmless what a spreadsheet would take for a formula, and nothing else", () => {
    const wards = ["=1+1", "+1", "-1", "@SUM(A1)", "3E", "a=b"];
    const rows = wards.map((ward) => [ward, "2026-10-01", 0, 0, 'say "x"\nagain']);
    const read = parse(sheetText({ ...sheet, rows }, "csv"), { from: 2 }) as string[][];
    // An apostrophe in front keeps a spreadsheet from computing the cell: OWASP, CSV injection (from memory).
    expect(read.map((row) => row[0])).toEqual(["'=1+1", "'+1", "'-1", "'@SUM(A1)", "3E", "a=b"]);
    expect(read.every((row) => row[4] === 'say "x"\nagain')).toBe(true);
  });
});

describe("a sheet as JSON", () => {
  it("is the sheet itself", () => {
    const text = sheetText(sheet, "json");
    expect(text.endsWith("}\n")).toBe(true);
    expect(JSON.parse(text)).toEqual(sheet);
  });
});
