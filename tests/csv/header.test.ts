import { describe, expect, it } from "vitest";
import { readHeader } from "../../src/csv/header.ts";
import type { Row, RowTrouble } from "../../src/csv/scan-row.ts";
import { layoutOf } from "./written-files.ts";

function header(cells: string[], trouble: RowTrouble | null = null) {
  const row: Row = { line: 1, cells, raw: cells.join(","), trouble };
  return readHeader(row, layoutOf("daily-counts.csv"));
}

function faults(cells: string[], trouble: RowTrouble | null = null) {
  const read = header(cells, trouble);
  return "faults" in read ? read.faults.map(({ code, column, position }) => [code, column, position]) : [];
}

describe("readHeader", () => {
  it("places the columns in the order of the file", () => {
    const read = header([" Patients", "day", "CATHETERS", "ward"]);
    const columns = "columns" in read ? read.columns : [];
    expect(columns.map(({ name, position }) => [name, position])).toEqual([
      ["patients", 1],
      ["day", 2],
      ["catheters", 3],
      ["ward", 4],
    ]);
    const known = layoutOf("daily-counts.csv").columns;
    expect(columns.map(({ column }) => column)).toEqual([known.patients, known.day, known.catheters, known.ward]);
  });

  it("names everything that is wrong at once", () => {
    expect(faults(["day", "Day", "", "nurse", "p\uFFFDtients"])).toEqual([
      ["csv-column-repeated", "day", 2],
      ["csv-column-unknown", null, 3],
      ["csv-column-unknown", null, 4],
      ["csv-not-utf8", null, 5],
      ["csv-column-missing", "ward", null],
      ["csv-column-missing", "patients", null],
      ["csv-column-missing", "catheters", null],
    ]);
  });

  it("takes a line without any known name for a missing header and repeats nothing of it", () => {
    const read = header(["Maple Rivera", "2026-02-01", "3", "1"]);
    expect(faults(["Maple Rivera", "2026-02-01", "3", "1"])).toEqual([["csv-header-missing", null, null]]);
    expect(JSON.stringify(read)).not.toContain("Rivera");
  });

  it("does not take what every object has for a column", () => {
    expect(faults(["ward", "day", "patients", "catheters", "constructor"])).toEqual([["csv-column-unknown", null, 5]]);
  });

  it("passes on what is wrong with the quotes", () => {
    const trouble: RowTrouble = { code: "csv-quote-open", detail: "It is open.", line: 1, cell: 2 };
    expect(faults([], trouble)).toEqual([["csv-quote-open", null, 2]]);
  });
});
