import { describe, expect, it } from "vitest";
import { dayBefore, everyDayExists } from "../../../src/domain/counting/day-before.ts";
import { dayOf } from "../../reference/day-text.ts";

describe("the day before", () => {
  it("is yesterday, also before 1970", () => {
    expect(dayBefore(dayOf("2024-03-01"), everyDayExists)).toBe(dayOf("2024-02-29"));
    expect(dayBefore(0, everyDayExists)).toBe(-1);
  });

  // Source: IANA time zone database, Pacific/Apia moved over the date line and had no 2011-12-30.
  it("steps over the date that Pacific/Apia skipped", () => {
    const exists = (day: number) => day !== dayOf("2011-12-30");
    expect(dayBefore(dayOf("2011-12-31"), exists)).toBe(dayOf("2011-12-29"));
    expect(dayBefore(dayOf("2011-12-30"), exists)).toBe(dayOf("2011-12-29"));
  });

  it("stops at a calendar in which no day exists, instead of searching for ever", () => {
    expect(() => dayBefore(100, () => false)).toThrow("no facility day exists");
  });
});
