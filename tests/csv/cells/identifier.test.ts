import { describe, expect, it } from "vitest";
import { identifier } from "../../../src/csv/cells/identifier.ts";
import { readCell } from "./read-cell.ts";

describe("identifier", () => {
  it.each(["007", "0", "P-1/2", "1E5", "5e3", "3E2W", "E+11", "#4", "N 1", "1234567890123450", "+49", "été", "日本"])(
    "keeps %j as it is",
    (text) => {
      expect(readCell(identifier, text).value).toBe(text);
    },
  );

  it("brings letters with accents into one form", () => {
    // The Unicode Standard, annex 15, figure 3: e and U+0301 compose to U+00E9 (from memory).
    expect(readCell(identifier, "e\u0301te\u0301").value).toBe("\u00e9t\u00e9");
  });

  // What spreadsheets write: common practice.
  it.each([
    "1.23E+11",
    "1,23E+11",
    "4E-5",
    "1.23457e+14",
    "####",
    "#N/A",
    "#ref!",
    "#NAME?",
    '="007"',
    "123456789012345000",
  ])("refuses %j, which a spreadsheet has made", (text) => {
    expect(readCell(identifier, text).value).toBe("csv-identifier-damaged");
  });

  it.each(["N\n1", "N\u00071", "N\u200b1", "N\u20281", "N\u202e1", "N\u00ad1", "N\u00851"])(
    "refuses %j, whose characters are not all seen",
    (text) => {
      expect(readCell(identifier, text).value).toBe("csv-character");
    },
  );
});
