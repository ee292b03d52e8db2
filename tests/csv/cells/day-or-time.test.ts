import { describe, expect, it } from "vitest";
import { dayOrTime } from "../../../src/csv/cells/day-or-time.ts";
import { readCell } from "./read-cell.ts";

describe("dayOrTime", () => {
  // New York is five hours behind UTC in winter and four in summer (US Energy Policy Act of 2005, section 110; from memory).
  it.each([
    ["2026-02-01T10:00", Date.UTC(2026, 1, 1, 15)],
    ["2025-07-01 10:00", Date.UTC(2025, 6, 1, 14)],
  ])("reads the time %j without a mark", (text, instant) => {
    expect(readCell(dayOrTime, text)).toEqual({ value: instant, marks: [] });
  });

  it.each([
    ["2026-02-01", Date.UTC(2026, 1, 1, 17)],
    ["2025-07-01", Date.UTC(2025, 6, 1, 16)],
  ])("takes noon of the day %j, and marks it", (text, instant) => {
    expect(readCell(dayOrTime, text)).toEqual({ value: instant, marks: ["time-unknown"] });
  });

  it("marks a time that occurs twice, as for every time", () => {
    expect(readCell(dayOrTime, "2025-11-02T01:30").marks).toEqual(["repeated-hour"]);
  });

  it.each([
    ["2026-02-30", "time-unreadable"],
    ["1899-12-31", "day-unreadable"],
    ["2025-03-09T02:30", "time-does-not-exist"],
    ["45678", "csv-date-serial"],
    ["01/02/2026", "csv-date-ambiguous"],
    ["yesterday", "time-unreadable"],
  ])("refuses %j: %s", (text, code) => {
    expect(readCell(dayOrTime, text)).toEqual({ value: code, marks: [] });
  });
});
