import { expect, it } from "vitest";
import { completedYears } from "../../../src/domain/criteria/age.ts";
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
