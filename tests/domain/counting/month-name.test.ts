import { expect, it } from "vitest";
import { month } from "../../../shared/day.ts";
import { monthName } from "../../../src/domain/counting/month-name.ts";

it("names a month in US English, whatever the machine's time zone", () => {
  expect(monthName(month.parse("2026-03"))).toBe("March 2026");
  expect(monthName(month.parse("2025-12"))).toBe("December 2025");
});
