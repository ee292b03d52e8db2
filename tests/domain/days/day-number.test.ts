import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { day } from "../../../shared/day.ts";
import { dayNumber, daysFromTo, dayText, weekdayOf } from "../../../src/domain/days/day-number.ts";
import { plainDate } from "./every-zone.ts";

describe("day numbers", () => {
  // Source: day 0 is the start of POSIX time; 2001-09-09 is the date of second 1,000,000,000 and 2038-01-19 that of
  // second 2^31, as `date -u -d @N` prints them: 1e9 / 86400 = 11574.07, 2^31 / 86400 = 24855.13.
  it.each([
    ["1970-01-01", 0],
    ["1969-12-31", -1],
    ["2001-09-09", 11_574],
    ["2038-01-19", 24_855],
  ])("put %s at %d", (text, n) => {
    expect(dayNumber(day.parse(text))).toBe(n);
    expect(dayText(n)).toBe(text);
  });

  // Source: Gregorian calendar, a century is a leap year only when 400 divides it.
  it.each([
    ["2024-02-28", "2024-02-29"],
    ["2024-02-29", "2024-03-01"],
    ["2023-02-28", "2023-03-01"],
    ["1900-02-28", "1900-03-01"],
    ["2000-02-28", "2000-02-29"],
    ["2025-12-31", "2026-01-01"],
  ])("let %s be followed by %s", (text, next) => {
    expect(dayText(dayNumber(day.parse(text)) + 1)).toBe(next);
  });

  it("agree with Temporal from year 0 to year 9999, with their weekdays (a failure prints its seed)", () => {
    fc.assert(
      fc.property(fc.integer({ min: -719_528, max: 2_932_896 }), (n) => {
        const date = plainDate(n);
        expect(dayText(n)).toBe(date.toString());
        expect(dayNumber(day.parse(date.toString()))).toBe(n);
        expect(weekdayOf(n)).toBe(date.dayOfWeek % 7);
      }),
      { numRuns: 300, examples: [[-719_528], [2_932_896]] },
    );
  });

  it.each([2_932_897, -719_529, 0.5, Number.NaN])("are whole and within four-digit years, so %d has no text", (n) => {
    expect(() => dayText(n)).toThrow(Error);
  });
});

describe("weekdays", () => {
  // Source: `zdump -v` prints the weekday of each change of the clocks of the IANA tz database (2025b).
  it.each([
    ["2011-12-29", 4],
    ["2018-11-04", 0],
    ["1985-12-31", 2],
    ["1969-09-30", 2],
    ["2024-03-30", 6],
  ])("of %s is %d, where Sunday is 0", (text, weekday) => {
    expect(weekdayOf(dayNumber(day.parse(text)))).toBe(weekday);
  });

  it("are refused for what is no whole day", () => {
    expect(() => weekdayOf(0.5)).toThrow(Error);
    expect(() => weekdayOf(Number.NaN)).toThrow(Error);
  });
});

it("the days from one to another are all of them, both included, and none where the first is the later", () => {
  expect(daysFromTo(19_787, 19_789)).toEqual([19_787, 19_788, 19_789]);
  expect([daysFromTo(-1, -1), daysFromTo(3, 2)]).toEqual([[-1], []]);
});
