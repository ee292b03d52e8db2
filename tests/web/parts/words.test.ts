import { describe, expect, it } from "vitest";
import { day, month } from "../../../shared/day.ts";
import type { Sheet } from "../../../shared/sheet.ts";
import * as words from "../../../src/web/parts/words.ts";

describe("days and months in words", () => {
  // Weekdays from a printed calendar: 2026-11-01 is a Sunday, 2024-02-29 a Thursday.
  it.each([
    ["2026-11-01", "Sun, Nov 1", "Sunday, November 1, 2026"],
    ["2024-02-29", "Thu, Feb 29", "Thursday, February 29, 2024"],
  ])("%s is %s, or %s", (text, short, long) => {
    expect([words.dayWords(day.parse(text)), words.longDayWords(day.parse(text))]).toEqual([short, long]);
  });

  it("say an instant on the clocks of the facility, whatever the reader's", () => {
    const instant = "2026-11-20T15:00:00.000Z";
    expect(words.instantWords(instant, "America/New_York")).toBe("November 20, 2026 at 10:00 (America/New_York)");
    expect(words.instantWords(instant, "Pacific/Auckland")).toBe("November 21, 2026 at 04:00 (Pacific/Auckland)");
    expect(words.instantWords("2026-11-20T05:00:00Z", "America/New_York")).toContain("at 00:00");
  });

  it.each([
    ["2026-02", "2026-02-01", "2026-02-28"],
    ["2024-02", "2024-02-01", "2024-02-29"],
    ["2026-12", "2026-12-01", "2026-12-31"],
  ])("%s is %s to %s", (text, first, last) => {
    expect(words.daysOfMonth(month.parse(text))).toEqual({ first, last });
  });

  it.each([
    ["2026-11", 1, "2026-12"],
    ["2026-12", 1, "2027-01"],
    ["2026-01", -1, "2025-12"],
    ["9999-12", 1, null],
    ["0000-01", -1, null],
  ])("from %s, %i month on is %s", (text, steps, expected) => {
    expect(words.monthAfter(month.parse(text), steps)).toBe(expected);
  });

  it("name a month", () => {
    expect(words.monthWords(month.parse("2026-11"))).toBe("November 2026");
  });
});

describe("figures in words", () => {
  it.each([
    [0, "whole", "0"],
    [12345, "whole", "12,345"],
    [3 / 22, "ratio", "0.14"],
    [1, "ratio", "1.00"],
    [0, "ratio", "0.00"],
    [null, "whole", "missing"],
    [null, "ratio", "missing"],
  ] as const)("%s as a %s is shown as %s", (cell, kind, expected) => {
    expect(words.figureWords(cell, kind)).toBe(expected);
  });

  it("finds a cell by the key of its column, and takes a missing column for a bug", () => {
    const sheet = { id: "s", columns: [{ key: "a" }, { key: "b" }] } as Sheet;
    expect(words.cellOf(sheet, ["x", null], "b")).toBeNull();
    expect(() => words.cellOf(sheet, ["x", null], "c")).toThrow("no column c");
  });
});
