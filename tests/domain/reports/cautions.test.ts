import { describe, expect, it } from "vitest";
import { cautionsOf, countingSources } from "../../../src/domain/reports/cautions.ts";
import { reports } from "../../../src/domain/reports/index.ts";
import type { MonthFacts } from "../../../src/domain/reports/month-facts.ts";
import { qualityKinds } from "../../../src/domain/timeline/data-quality.ts";
import { day, facts, findings, ward } from "./facts.ts";

const times = (...changes: [string, string][]) =>
  changes.map(([from, time]) => ({ fromDay: day(from), time })) as unknown as MonthFacts["census"];

describe("what a reader must know", () => {
  it("is the census alone when nothing is doubtful", () => {
    expect(cautionsOf(facts({ wards: [ward("A")] }))).toEqual([
      "Counted at the daily census (00:00, America/New_York).",
    ]);
  });

  it("names each census time in force and the day from which it holds", () => {
    const census = times(["2026-10-01", "00:00"], ["2026-10-15", "24:00"]);
    expect(cautionsOf(facts({ census }))).toEqual([
      "Counted at the daily census (00:00, 24:00 from 2026-10-15, America/New_York).",
    ]);
  });

  it("tells that the period is not over", () => {
    expect(cautionsOf(facts({ complete: false }))[1]).toBe(
      "The period is not over: patients still here are counted up to now.",
    );
  });

  it("names the wards that nobody described, each once", () => {
    const wards = [
      ward("A", { namedOnly: true }),
      ward("B", { namedOnly: true }),
      ward("C", { namedOnly: true, inpatient: "unknown" }),
      ward("D", { inpatient: "unknown" }),
      ward("E"),
    ];
    expect(cautionsOf(facts({ wards })).slice(1)).toEqual([
      "Named only in moves and counted as inpatient units: A, B. Describe them in wards.csv.",
      "Not counted, because the setting of these units is not recorded: C, D. Give each its setting in wards.csv: inpatient, outpatient or procedure.",
    ]);
  });

  it("counts what is doubtful by kind, in the words for one or for several", () => {
    const found = findings("not-confirmed", "in-place-on-arrival", "not-confirmed");
    expect(cautionsOf(facts({ findings: found })).slice(1)).toEqual([
      "Data quality: 1 catheter was in place on arrival.",
      "Data quality: 2 catheters were not confirmed in place for as long as the policy asks, or longer.",
    ]);
  });

  it("tells that time before a ward was there is not counted", () => {
    const said = (count: number) => {
      const kinds = Array.from({ length: count }, () => "ward-not-open" as const);
      return cautionsOf(facts({ findings: findings(...kinds) })).slice(1);
    };
    expect(said(1)).toEqual([
      "Data quality: 1 time on a ward lies before anything was said of that ward, and is not counted.",
    ]);
    expect(said(2)).toEqual([
      "Data quality: 2 times on wards lie before anything was said of these wards, and are not counted.",
    ]);
  });

  it("has words for every kind", () => {
    const kinds = Object.keys(qualityKinds) as (keyof typeof qualityKinds)[];
    expect(cautionsOf(facts({ findings: findings(...kinds) }))).toHaveLength(1 + kinds.length);
  });

  it("stands below every report, with the rules that the figures follow", () => {
    const given = facts({ complete: false });
    for (const report of Object.values(reports)) {
      expect(report(given).cautions).toEqual(cautionsOf(given));
      expect(report(given).sources).toEqual(countingSources);
    }
  });
});
