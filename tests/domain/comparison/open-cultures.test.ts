import { expect, it } from "vitest";
import type { ChartInput } from "../../../shared/chart-input.ts";
import { day, month } from "../../../shared/day.ts";
import { drawChart } from "../../../src/charts/draw-chart.ts";
import { chartsOf } from "../../../src/domain/comparison/compare-wards.ts";
import type { ComparedWard, ComparisonFacts } from "../../../src/domain/comparison/comparison-facts.ts";
import { monthsBetween } from "../../../src/domain/comparison/period.ts";
import { dayNumber } from "../../../src/domain/days/day-number.ts";
import type { Dwell } from "../../../src/domain/statistics/dwell-curve.ts";

const months = monthsBetween(month.parse("2026-01"), month.parse("2026-12"), "/from");
const at = (text: string) => dayNumber(day.parse(text));
const dwells: Dwell[] = [
  { days: 2, end: "removed" },
  { days: 4, end: "removed" },
  { days: 6, end: "in-place" },
];

/** Wards of Alder Bay with so many infections and catheter-days in every month; null: not watched. */
function ward(
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

const facts = (wards: readonly ComparedWard[], more: Partial<ComparisonFacts> = {}): ComparisonFacts => ({
  ...{ facility: { name: "Alder Bay Hospital", zone: "America/New_York" }, months, asOf: 0, complete: true },
  ...{ type: "medical ward", wards, chosen: null, notCounted: [], insertionsUnknown: 0, ...more },
});
const byId = (charts: readonly ChartInput[], id: string) => {
  const found = charts.find(({ input }) => input.id === id);
  if (!found) throw new Error(`there is no chart ${id}`);
  return found;
};

it("every point with open cultures behind it says so, and no other: a rate of 0 is then no final zero", () => {
  const plain = ward("2E", [[0, 100]]);
  const open = { ...plain, months: plain.months.map((one, n) => (n === 3 ? { ...one, openCases: [7, 8] } : one)) };
  const other = ward("3E", [[2, 200]]);
  const charts = chartsOf(facts([open, other], { chosen: open }));
  const texts = (id: string) => {
    const drawn = drawChart(byId(charts, id));
    return { points: drawn?.pointTexts.join("\n") ?? "", rows: JSON.stringify(drawn?.table.rows) };
  };
  for (const [id, points] of [
    ["funnel", 1],
    ["order", 1],
    ["rates", 2],
    ["months", 1],
  ] as const) {
    const { points: said, rows } = texts(id);
    expect([id, said.match(/not final: 2 open/g)?.length]).toEqual([id, points]);
    expect(rows).toContain("not final: 2 open");
  }
  // Cultures change no utilization.
  expect(texts("utilization").points).not.toContain("not final");
  const gaps = chartsOf(facts([{ ...open, infectionDays: other.infectionDays }])).find(
    ({ input }) => input.id === "gaps",
  );
  expect(gaps?.notes[0]).toBe("The gaps are not final: 2 open.");
});
