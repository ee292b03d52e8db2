import type { ChartInput } from "../../../shared/chart-input.ts";
import { day, month } from "../../../shared/day.ts";
import type { ComparedWard, ComparisonFacts } from "../../../src/domain/comparison/comparison-facts.ts";
import { monthsBetween } from "../../../src/domain/comparison/period.ts";
import { dayNumber } from "../../../src/domain/days/day-number.ts";
import type { Dwell } from "../../../src/domain/statistics/dwell-curve.ts";

export const months = monthsBetween(month.parse("2026-01"), month.parse("2026-12"), "/from");
const at = (text: string) => dayNumber(day.parse(text));
const dwells: Dwell[] = [
  { days: 2, end: "removed" },
  { days: 4, end: "removed" },
  { days: 6, end: "in-place" },
];

/** Wards of Alder Bay with so many infections and catheter-days in every month; null: not watched. */
export function ward(
  code: string,
  monthly: readonly (readonly [infections: number | null, catheterDays: number])[],
): ComparedWard {
  const list = months.map((one, place) => {
    const [infections = 0, catheterDays = 0] = monthly[place % monthly.length] ?? [];
    return { month: one, patientDays: catheterDays * 4, catheterDays, infections, openCases: [] };
  });
  return {
    ...{ wardId: code.length, code, name: code, type: "medical ward", notes: [], months: list, dwells },
    days: list.map(({ month: one, catheterDays }) => ({ day: at(`${one}-01`), catheterDays })),
    infectionDays: list.flatMap(({ month: one, infections }) => Array(infections ?? 0).fill(at(`${one}-01`))),
  };
}

/** A comparison of them. */
export const facts = (wards: readonly ComparedWard[], more: Partial<ComparisonFacts> = {}): ComparisonFacts => ({
  ...{ facility: { name: "Alder Bay Hospital", zone: "America/New_York" }, months, asOf: 0, complete: true },
  ...{ type: "medical ward", wards, chosen: null, notCounted: [], insertionsUnknown: 0, ...more },
});
/** The chart with an id; throws an Error where there is none. */
export const byId = (charts: readonly ChartInput[], id: string) => {
  const found = charts.find(({ input }) => input.id === id);
  if (!found) throw new Error(`there is no chart ${id}`);
  return found;
};
