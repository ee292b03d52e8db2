import { describe, expect, it } from "vitest";
import { day } from "../../../src/csv/cells/day.ts";
import { readCell } from "./read-cell.ts";

describe("day", () => {
  // Days since 1970-01-01 as GNU date counts them: date -u -d DAY +%s, divided by 86400.
  it.each([
    ["1970-01-01", 0],
    ["2024-02-29", 19_782],
    ["2026-02-01", 20_485],
    ["1900-01-01", -25_567],
    ["2100-12-31", 47_846],
  ])("reads %j", (text, number) => {
    expect(readCell(day, text).value).toBe(number);
  });

  it.each([
    ["2026-02-29", "day-unreadable"],
    ["2026-13-01", "day-unreadable"],
    ["2026-2-1", "day-unreadable"],
    ["2026-02-01T00:00", "day-unreadable"],
    ["2026/02/01", "day-unreadable"],
    ["0206-02-01", "day-unreadable"],
    ["2101-01-01", "day-unreadable"],
    ["1 February 2026", "day-unreadable"],
    ["45678", "csv-date-serial"],
    ["01/02/2026", "csv-date-ambiguous"],
  ])("refuses %j: %s", (text, code) => {
    expect(readCell(day, text).value).toBe(code);
  });
});
