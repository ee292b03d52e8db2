import { describe, expect, it } from "vitest";
import { weeklySampleDays } from "../../../src/domain/counting/weekly-sample-days.ts";
import { dayOf, textOf } from "../../reference/day-text.ts";

// October 2026 begins on a Thursday and ends on a Saturday; its Fridays are 2, 9, 16, 23, 30 (Gregorian calendar).
const october = { first: dayOf("2026-10-01"), last: dayOf("2026-10-31") };

function chosen(weekday: 1 | 2 | 3 | 4 | 5, missing: string[]): [string, string | null][] {
  const weeks = weeklySampleDays({ month: october, weekday, counted: (day) => !missing.includes(textOf(day)) });
  return weeks.map((week) => [textOf(week.planned).slice(8), week.used === null ? null : textOf(week.used).slice(8)]);
}

// Rules: CDC Patient Safety Component Manual, chapter 7, table 2 (from memory); bounds of "next available": our reading.
describe("the days of a weekly sample", () => {
  it("are the fixed weekday of every week", () => {
    expect(chosen(5, []).map(([, used]) => used)).toEqual(["02", "09", "16", "23", "30"]);
  });

  it("move to the next day that has both counts when the fixed day was missed", () => {
    expect(chosen(3, ["2026-10-14", "2026-10-15"])).toEqual([
      ["07", "07"],
      ["14", "16"],
      ["21", "21"],
      ["28", "28"],
    ]);
  });

  it("never move to a Saturday or Sunday: a missed Friday moves to Monday", () => {
    expect(chosen(5, ["2026-10-09"])[1]).toEqual(["09", "12"]);
  });

  it("do not move into the next planned day, nor past the month", () => {
    const week = ["14", "15", "16", "19", "20"].map((day) => `2026-10-${day}`);
    expect(chosen(3, week)[1]).toEqual(["14", null]);
    expect(chosen(5, ["2026-10-30"])[4]).toEqual(["30", null]);
  });

  it.each([0, 6] as const)("cannot be the weekend day %d", (weekday) => {
    expect(() => weeklySampleDays({ month: october, weekday, counted: () => true })).toThrow("cannot be the day");
  });
});
