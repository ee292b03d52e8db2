import { describe, expect, it } from "vitest";
import { day, type Month, month } from "../../../shared/day.ts";
import { comparedWard } from "../../../src/domain/comparison/compared-ward.ts";
import { totalsOf } from "../../../src/domain/comparison/comparison-facts.ts";
import { monthsBetween, yearUpTo } from "../../../src/domain/comparison/period.ts";
import { dayNumber } from "../../../src/domain/days/day-number.ts";

const months = monthsBetween(month.parse("2026-01"), month.parse("2026-12"), "/from");
const at = (text: string) => dayNumber(day.parse(text));

describe("a ward of a comparison", () => {
  const described = {
    ...{ id: 7, code: "5S", closedDay: at("2026-11-20") },
    settings: [
      { fromDay: at("2026-02-10"), name: "5 South", type: "medical ward", setting: "inpatient" as const },
      { fromDay: at("2026-06-01"), name: "5 South Surgery", type: "surgical ward", setting: "inpatient" as const },
    ],
  };
  const period = { first: at("2026-01-01"), last: at("2026-12-31") };
  const counts = {
    sums: [
      { day: at("2026-03-31"), patientDays: 9, catheterDays: 3 },
      { day: at("2026-04-01"), patientDays: 8, catheterDays: 2 },
    ],
    scopes: [{ fromMonth: month.parse("2026-04"), toMonth: null as Month | null }],
    infections: [{ day: at("2026-03-31") }, { day: at("2026-04-30") }],
    // One in a month under surveillance, twice the same, and one in a month that is not.
    open: ["2026-04", "2026-04", "2026-03"].map((text, i) => ({ month: month.parse(text), caseId: i === 2 ? 8 : 7 })),
    dwells: [],
  };

  it("counts infections of watched months alone, under the type it has at the end, and tells what happened to it", () => {
    const found = comparedWard(described, { months, period, counts });
    expect([found.name, found.type, found.infectionDays, found.days]).toEqual([
      ...["5 South Surgery", "surgical ward", [at("2026-04-30")]],
      [{ day: at("2026-04-01"), catheterDays: 2 }],
    ]);
    expect(found.months.slice(2, 5)).toEqual([
      { month: "2026-03", patientDays: 9, catheterDays: 3, infections: null, openCases: [] },
      { month: "2026-04", patientDays: 8, catheterDays: 2, infections: 1, openCases: [7] },
      { month: "2026-05", patientDays: 0, catheterDays: 0, infections: 0, openCases: [] },
    ]);
    expect(found.notes).toEqual([
      "Known from 2026-02-10.",
      "Closed after 2026-11-20.",
      "Was of another type in this period: medical ward.",
    ]);
    expect(totalsOf(found.months)).toEqual({
      patientDays: 17,
      catheterDays: 5,
      watchedDays: 2,
      infections: 1,
      open: 1,
    });
  });
});

describe("a period", () => {
  it("is the year up to a day, unless somebody says another one", () => {
    expect(yearUpTo(at("2026-12-01"))).toEqual({ from: "2026-01", to: "2026-12" });
    expect(yearUpTo(at("2026-03-31"))).toEqual({ from: "2025-04", to: "2026-03" });
  });

  it("is refused when it ends before it begins, or cannot be read as a chart", () => {
    const between = (from: string, to: string) => () => monthsBetween(month.parse(from), month.parse(to), "/from");
    expect(between("2026-02", "2026-01")).toThrow("2026-02 is after 2026-01.");
    expect(between("2020-01", "2026-01")).toThrow("more than 60 months");
    expect(between("2021-02", "2026-01")()).toHaveLength(60);
  });
});
