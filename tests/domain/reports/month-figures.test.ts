import { describe, expect, it } from "vitest";
import { type FigureKey, figureKeys } from "../../../shared/figure-words.ts";
import { type Figure, monthReport } from "../../../shared/month-report.ts";
import { sheet as sheetShape } from "../../../shared/sheet.ts";
import { monthFigures } from "../../../src/domain/reports/month-figures.ts";
import { monthFiguresSheet } from "../../../src/domain/reports/month-figures-sheet.ts";
import { figureFacts, model, pooled, type ToldWard } from "./figure-facts.ts";

type Said = Parameters<typeof figureFacts>[1];

function report(told: Readonly<Record<string, ToldWard>>, said?: Said) {
  return monthFigures(figureFacts(told, said));
}

/** A figure of a ward, or of all wards. */
function figure(told: Readonly<Record<string, ToldWard>>, code: string | null, key: FigureKey, said?: Said): Figure {
  const { wards, total } = report(told, said);
  const list = code === null ? total.figures : wards.find((ward) => ward.code === code)?.figures;
  const found = list?.find((one) => one.key === key);
  if (!found) throw new Error(`${code} has no ${key}`);
  return found;
}

const both = { infections: { baselineId: 7, baseline: pooled }, catheterDays: { baselineId: 7, baseline: pooled } };
const closeTo = (value: number) => expect.closeTo(value, 9);

describe("the figures of a month", () => {
  it("have the published shape, every key once, and a reason wherever there is no value", () => {
    const wards = { A: { days: [310, 100] }, B: { inpatient: "unknown", care: null }, C: {} } as const;
    const list: Readonly<Record<string, ToldWard>>[] = [wards, {}, { A: { infections: { value: 2 } } }];
    for (const told of list) {
      const found = report(told);
      expect(monthReport.parse(found)).toEqual(found);
      for (const { figures } of [...found.wards, found.total]) {
        expect(figures.map(({ key }) => key)).toEqual(figureKeys);
        for (const one of figures) expect(one.value === null, one.key).toBe(one.reason !== null);
      }
    }
  });

  it("are rates with mid-P limits of a Poisson count", () => {
    const told = { A: { days: [4_000, 2_000] as const, infections: { value: 4 } } };
    // Limits of a count of 4: 1.2709451624 and 9.6484396700 (mpmath 1.2.1 at 40 digits).
    expect(figure(told, "A", "rate")).toMatchObject({
      ...{ value: 2, numerator: 4, denominator: 2_000, method: "Poisson, mid-P limits" },
      ...{ lower: closeTo(1.2709451624119052 / 2), upper: closeTo(9.64843967001826 / 2) },
    });
    expect(figure(told, "A", "population_rate")).toMatchObject({ value: 10, denominator: 4_000 });
    // The older rule takes exact limits up to 14.
    const older = figure(told, "A", "rate", { limits: "exact-to-14" });
    expect([older.lower, older.method]).toEqual([closeTo(1.0898653736263249 / 2), "Poisson, exact limits"]);
  });

  it("are utilization with Wilson's limits", () => {
    // statsmodels 0.13.5: 487 of 1,210.
    expect(figure({ A: { days: [1_210, 487] } }, "A", "utilization")).toMatchObject({
      ...{ value: 487 / 1_210, numerator: 487, denominator: 1_210 },
      ...{ lower: closeTo(0.3751985455537716), upper: closeTo(0.43037738177591006) },
    });
  });

  it("are a SIR with its p value, a CAD against the target, and a SUR", () => {
    const told = { A: { type: "medical", days: [4_000, 1_100] as const, infections: { value: 4 } } };
    const said = { ...both, goal: 0.5 };
    // 4 / 3.3: 1.212, p 0.6571 (printed in the CDC's public statistical routine for the SIR).
    const sir = figure(told, "A", "sir", said);
    expect([sir.value?.toFixed(3), sir.p?.toFixed(4)]).toEqual(["1.212", "0.6571"]);
    expect(sir).toMatchObject({ numerator: 4, denominator: closeTo(3.3) });
    // 4 - 3.3 x 0.5, by the appendix of Soe et al. 2015.
    expect(figure(told, "A", "cad", said).value).toBeCloseTo(2.35, 9);
    expect(figure(told, "A", "sur", said)).toMatchObject({ value: closeTo(1_100 / 1_600), numerator: 1_100 });
    expect(report(told, said).wards[0]?.predicted.infections.steps).toEqual([
      { what: "infections per 1,000 catheter-days, medical", value: 3 },
      { what: "catheter-days", value: 1_100 },
    ]);
  });

  it("have no SIR against other hospitals where the facility reads an open point otherwise, and say so", () => {
    const nonDefault = ["When “there was no such sign” is known of a window: On every day of it"];
    const told = { A: { type: "medical", days: [4_000, 1_100] as const, infections: { value: 4 }, nonDefault } };
    expect(figure(told, "A", "sir", both).reason).toMatch(/^Non-default reading/);
    expect(figure(told, "A", "sur", both).value).not.toBeNull();
    expect(report(told, both).cautions.join("\n")).toContain(`no SIR against other hospitals. ${nonDefault[0]}.`);
  });

  it("withhold the SIR where fewer than 1.0 are predicted, and show what was predicted", () => {
    const told = { A: { type: "medical", days: [900, 300] as const, infections: { value: 2 } } };
    expect(figure(told, "A", "sir", both)).toMatchObject({
      ...{ value: null, numerator: 2, denominator: closeTo(0.9), lower: null, p: null },
      reason: "Fewer than 1.0 infections are predicted, so the SIR is withheld.",
    });
  });

  it("say why there is no ratio: no baseline, no target, a ward that is not covered, a factor that is not known", () => {
    const told = { A: { type: "burn", days: [900, 300] as const } };
    expect(figure(told, "A", "sir").reason).toBe("No baseline is set for this month.");
    expect(figure(told, "A", "sir", both).reason).toBe("Alder Bay region does not cover wards of the type burn.");
    const byModel = { infections: { baselineId: 8, baseline: model } };
    expect(figure(told, "A", "sir", byModel).reason).toMatch(/^The beds of A is not known/);
    const covered = { A: { type: "medical", days: [4_000, 1_100] as const } };
    expect(figure(covered, "A", "cad", both).reason).toBe("Nobody has set a target for the SIR.");
    // e^(-6 + 0.5) x 1,100.
    const beds = { A: { ...covered.A, factors: { beds: 24 } } };
    expect(figure(beds, "A", "sir", byModel).denominator).toBeCloseTo(Math.exp(-5.5) * 1_100, 9);
  });

  it("have no rate without days, and none of a ward that is not watched", () => {
    expect(figure({ A: { infections: { value: 1 } } }, "A", "rate")).toMatchObject({
      ...{ value: null, numerator: 1, denominator: 0 },
      reason: "There are no catheter-days, so there is no rate.",
    });
    const reason = "Not watched for infections in this month.";
    const told = { A: { days: [100, 50] as const, infections: { value: null, reason } } };
    expect(figure(told, "A", "rate")).toMatchObject({ value: null, denominator: null, reason });
  });

  it("pool wards by sums, and rates only over the wards whose infections are known", () => {
    const told = {
      A: {
        type: "medical",
        days: [400, 200] as const,
        infections: { value: 1 },
        care: { reviewsDue: 10, reviewsInTime: 9 },
      },
      B: {
        type: "burn",
        days: [100, 100] as const,
        infections: { value: 2 },
        care: { reviewsDue: 30, reviewsInTime: 6 },
      },
      C: { type: "medical", days: [500, 300] as const, infections: { value: null, reason: "Not watched." } },
      D: { inpatient: "unknown" as const, care: null },
    };
    const total = (key: FigureKey) => figure(told, null, key, both);
    expect([total("patient_days").value, total("catheter_days").value]).toEqual([1_000, 600]);
    expect(total("utilization").value).toBe(0.6);
    expect(total("rate")).toMatchObject({ value: 10, numerator: 3, denominator: 300 });
    // 15 of 40, and no mean of 0.9 and 0.2.
    expect(total("reviews_in_time").value).toBe(0.375);
    // Only A is covered and watched: 200 x 0.003.
    expect(total("sir")).toMatchObject({ numerator: 1, denominator: closeTo(0.6) });
    expect(total("sur")).toMatchObject({ numerator: 500, denominator: closeTo(360) });
    expect(report(told, both).cautions.filter((text) => text.startsWith("Compared with"))).toHaveLength(1);
    expect(report(told, both).cautions).toContain(
      "Infections are not known, and rates of all units leave these out: C.",
    );
  });

  it("say of several wards the reason that all share, or that each has its own", () => {
    const unwatched = { infections: { value: null, reason: "Not watched." } };
    const told = { A: unwatched, B: unwatched };
    expect(figure(told, null, "infections").reason).toBe("Not watched.");
    expect(figure({ ...told, C: { inpatient: "unknown", care: null } }, null, "infections").reason).toBe(
      "No ward has it, for reasons that stand with each.",
    );
  });

  it("are the median time in place with catheters that are still in, and who inserted and where", () => {
    const dwells = ([1, 2, 3, 4, 5] as const).map(
      (days) => ({ days, end: days === 5 ? "in-place" : "removed" }) as const,
    );
    const inserted = [
      { insertedIn: "ward", insertedBy: "registered-nurse" },
      { insertedIn: "ward", insertedBy: "physician" },
      { insertedIn: undefined, insertedBy: undefined },
    ] as const;
    const told = { A: { days: [20, 15] as const, dwells, inserted, open: 2 } };
    expect(figure(told, "A", "dwell_median")).toMatchObject({ value: 3, numerator: 4, denominator: 5 });
    expect(figure(told, "A", "insertions").value).toBe(3);
    expect(figure(told, null, "catheters_open").value).toBe(2);
    expect(figure({ A: { ...told.A, open: null }, B: {} }, null, "catheters_open")).toMatchObject({
      ...{ value: null, reason: "Counted in the current month only." },
    });
    expect(report(told).total.insertions).toEqual({
      places: [
        { place: "ward", count: 2 },
        { place: null, count: 1 },
      ],
      inserters: [
        { inserter: "registered-nurse", count: 1 },
        { inserter: "physician", count: 1 },
        { inserter: null, count: 1 },
      ],
    });
  });
});

describe("the figures as a sheet", () => {
  it("has a row for each ward and figure with the very numbers, those of all wards last", () => {
    const found = report({ A: { days: [400, 200] }, B: { days: [100, 50] } });
    const sheet = monthFiguresSheet(found);
    expect(sheetShape.parse(sheet)).toEqual(sheet);
    expect(sheet.rows).toHaveLength(3 * figureKeys.length);
    const at = (key: string) => sheet.columns.findIndex((column) => column.key === key);
    const utilization = sheet.rows.filter((row) => row[at("figure")] === "utilization");
    expect(utilization.map((row) => [row[0], row[at("value")], row[at("denominator")]])).toEqual([
      ["A", 0.5, 400],
      ["B", 0.5, 100],
      ["", 0.5, 500],
    ]);
    for (const row of sheet.rows) expect(row).toHaveLength(sheet.columns.length);
  });
});
