import { describe, expect, it } from "vitest";
import { Problem } from "../../../shared/problems.ts";
import { refuseSpreadsheetDate } from "../../../src/csv/cells/spreadsheet-date.ts";

function codeOf(text: string): string {
  try {
    refuseSpreadsheetDate(text);
    return "nothing said";
  } catch (error) {
    return error instanceof Problem ? error.code : String(error);
  }
}

describe("refuseSpreadsheetDate", () => {
  it.each([
    ["45678", "csv-date-serial"],
    ["45678.5", "csv-date-serial"],
    ["45678,4166666667", "csv-date-serial"],
    ["0", "csv-date-serial"],
    ["01/02/2026", "csv-date-ambiguous"],
    ["1/2/26 10:00", "csv-date-ambiguous"],
    ["01.02.2026", "csv-date-ambiguous"],
    ["1-2-2026T10:00", "csv-date-ambiguous"],
    ["2026-02-01", "nothing said"],
    ["2026/02/01", "nothing said"],
    ["20260201", "nothing said"],
    ["10:30", "nothing said"],
  ])("says about %j: %s", (text, code) => {
    expect(codeOf(text)).toBe(code);
  });
});
