import fc from "fast-check";
import { Temporal } from "temporal-polyfill";
import { describe, expect, it } from "vitest";
import { month } from "../../../shared/day.ts";
import { dayText } from "../../../src/domain/days/day-number.ts";
import { monthDays, monthOf, nextMonth } from "../../../src/domain/days/month.ts";

function daysOf(text: string): [string, string] {
  const { first, last } = monthDays(month.parse(text));
  return [dayText(first), dayText(last)];
}

describe("the days of a month", () => {
  // Source: Gregorian calendar.
  it.each([
    ["2024-02", "2024-02-01", "2024-02-29"],
    ["2023-02", "2023-02-01", "2023-02-28"],
    ["2100-02", "2100-02-01", "2100-02-28"],
    ["2026-12", "2026-12-01", "2026-12-31"],
    ["2026-04", "2026-04-01", "2026-04-30"],
    ["9999-12", "9999-12-01", "9999-12-31"],
  ])("of %s are %s to %s", (text, first, last) => {
    expect(daysOf(text)).toEqual([first, last]);
  });

  it("agree with Temporal, and the next month starts right after them (a failure prints its seed)", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 9998 }), fc.integer({ min: 1, max: 12 }), (year, number) => {
        const known = Temporal.PlainYearMonth.from({ year, month: number });
        const here = month.parse(known.toString());
        const { first, last } = monthDays(here);
        expect(daysOf(here)).toEqual([`${here}-01`, `${here}-${known.daysInMonth}`]);
        expect([monthOf(first), monthOf(last)]).toEqual([here, here]);
        expect(nextMonth(here)).toBe(known.add({ months: 1 }).toString());
        expect(monthDays(nextMonth(here)).first).toBe(last + 1);
      }),
      { numRuns: 300 },
    );
  });

  it("end with the year 9999, after which no month can be written", () => {
    expect(() => nextMonth(month.parse("9999-12"))).toThrow(Error);
  });
});
