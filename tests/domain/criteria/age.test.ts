import { expect, it } from "vitest";
import { completedMonths, completedYears } from "../../../src/domain/criteria/age.ts";
import { dayOf } from "../../reference/day-text.ts";

it.each([
  ["1958-03-10", "2024-03-09", 65],
  ["1958-03-10", "2024-03-10", 66],
  ["2023-03-10", "2024-03-10", 1],
  ["2024-03-10", "2024-03-10", 0],
  ["2004-02-29", "2025-02-28", 20],
  ["2004-02-29", "2025-03-01", 21],
  ["2024-03-11", "2024-03-10", -1],
])("born %s, on %s: %i completed years", (birth, day, years) => {
  expect(completedYears(dayOf(birth), dayOf(day))).toBe(years);
});

it.each([
  ["2025-11-15", "2026-11-14", 11],
  ["2025-11-15", "2026-11-15", 12],
  ["2026-11-15", "2026-11-14", -1],
])("born %s, on %s: %i completed months", (birth, day, months) => {
  expect(completedMonths(dayOf(birth), dayOf(day))).toBe(months);
});
