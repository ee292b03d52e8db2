import { expect, it } from "vitest";
import { isWeekend } from "../../../src/domain/counting/weekend.ts";
import { weekdayOf } from "../../../src/domain/days/day-number.ts";
import { dayOf } from "../../reference/day-text.ts";

// 2026-03-02 was a Monday (ISO 8601 calendar, week 10 of 2026).
it("is Saturday and Sunday of the week of Monday 2026-03-02", () => {
  const week = Array.from({ length: 7 }, (_, index) => isWeekend(weekdayOf(dayOf("2026-03-02") + index)));
  expect(week).toEqual([false, false, false, false, false, true, true]);
});
