import type { Sheet } from "../../../shared/sheet.ts";
import { monthSheet } from "./month.ts";
import type { MonthFacts } from "./month-facts.ts";
import { wardDaysSheet } from "./ward-days.ts";

/** Every report of days: facts in, sheet out. */
export const reports = {
  month: monthSheet,
  "ward-days": wardDaysSheet,
} as const satisfies Record<string, (facts: MonthFacts) => Sheet>;
