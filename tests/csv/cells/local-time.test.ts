import { describe, expect, it } from "vitest";
import { localTime } from "../../../src/csv/cells/local-time.ts";
import { readCell } from "./read-cell.ts";

describe("localTime", () => {
  // New York is five hours behind UTC in winter and four in summer; clocks changed on 2025-03-09 and 2025-11-02 at
  // two in the morning (US Energy Policy Act of 2005, section 110; from memory).
  it.each([
    ["2026-02-01T10:00", Date.UTC(2026, 1, 1, 15)],
    ["2025-07-01 10:00:30", Date.UTC(2025, 6, 1, 14, 0, 30)],
    ["2026-02-01T10:00+01:00", Date.UTC(2026, 1, 1, 9)],
    ["2026-02-01T10:00Z", Date.UTC(2026, 1, 1, 10)],
    ["2025-11-02T01:30-05:00", Date.UTC(2025, 10, 2, 6, 30)],
  ])("reads %j without a mark", (text, instant) => {
    expect(readCell(localTime, text)).toEqual({ value: instant, marks: [] });
  });

  it("takes the earlier instant of a time that occurs twice, and marks it", () => {
    expect(readCell(localTime, "2025-11-02T01:30")).toEqual({
      value: Date.UTC(2025, 10, 2, 5, 30),
      marks: ["repeated-hour"],
    });
  });

  it.each([
    ["2025-03-09T02:30", "time-does-not-exist"],
    ["2026-02-30T10:00", "time-unreadable"],
    ["2026-02-01", "time-unreadable"],
    ["2026/02/01 10:00", "time-unreadable"],
    ["45678.5", "csv-date-serial"],
    ["01/02/2026 10:00", "csv-date-ambiguous"],
  ])("refuses %j: %s", (text, code) => {
    expect(readCell(localTime, text)).toEqual({ value: code, marks: [] });
  });
});
