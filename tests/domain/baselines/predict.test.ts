import { describe, expect, it } from "vitest";
import type { ModelBaseline, PooledBaseline } from "../../../src/domain/baselines/baseline.ts";
import { earlierPeriod } from "../../../src/domain/baselines/earlier-period.ts";
import { predict, type WardInPeriod } from "../../../src/domain/baselines/predict.ts";
import { us2013PooledMeans } from "../../../src/domain/baselines/us-2013-pooled-means.ts";
import { readRows } from "../../reference/read-data.ts";
import { figureOf } from "../../reference/read-statistics.ts";
import { longTermAcuteCare } from "./long-term-acute-care.ts";

const origin = { ...us2013PooledMeans.origin, name: "The baseline" };
const ward = (given: Partial<WardInPeriod>): WardInPeriod => ({
  ...{ ward: "3E", wardType: "Burn", catheterDays: 1_000, patientDays: 2_000, factors: {}, ...given },
});

describe("pooled rates", () => {
  it("the shipped US means of 2013 are the published table: every printed rate, sums and notes", () => {
    const rows = readRows("us-2013-pooled-means.csv");
    expect(us2013PooledMeans.rates.map(({ key }) => key)).toEqual(rows.map((row) => row.location_type));
    for (const [at, row] of rows.entries()) {
      const rate = us2013PooledMeans.rates[at];
      expect(rate?.infectionsPerCatheterDay).toBe(Number(row.cauti) / Number(row.catheter_days));
      expect(((rate?.infectionsPerCatheterDay ?? 0) * 1_000).toFixed(1)).toBe(row.pooled_mean);
      expect(rate?.note === null).toBe(row.heading_inferred === "no");
    }
    expect(us2013PooledMeans.origin).toMatchObject({ year: "2013", definition: expect.stringContaining("yeasts") });
  });

  it("are told step by step, and a ward that is not covered says so and is left out of the sum", () => {
    const wards = [
      ward({ ward: "BURN" }),
      ward({ ward: "REHAB", wardType: "Rehabilitation" }),
      ward({ ward: "NEW", wardType: null }),
      ward({ ward: "RESP", wardType: "Respiratory", catheterDays: 500 }),
    ];
    const found = predict(us2013PooledMeans, "infections", wards);
    // Burn: 369 / 76,619; respiratory: 34 / 15,836 (Dudeck et al. 2015, table 5).
    expect(found.predicted.value).toBeCloseTo((369 / 76_619) * 1_000 + (34 / 15_836) * 500, 12);
    expect(found.uncovered).toEqual(["REHAB", "NEW"]);
    expect(found.wards.map(({ predicted }) => (predicted.value === null ? predicted.reason : "covered"))).toEqual([
      "covered",
      "US pooled means of 2013 does not cover wards of the type Rehabilitation.",
      "Nobody has said what type of ward NEW is.",
      "covered",
    ]);
    expect(found.wards[0]?.steps.map(({ what }) => what)).toEqual([
      "infections per 1,000 catheter-days, Burn",
      "catheter-days",
    ]);
  });

  it("without utilization predict no catheter-days; where none is covered there is no sum", () => {
    const found = predict(us2013PooledMeans, "catheter-days", [ward({})]);
    expect(found.wards[0]?.predicted).toEqual({
      value: null,
      reason: "US pooled means of 2013 has no utilization for wards of the type Burn.",
    });
    expect(found.predicted).toEqual({ value: null, reason: "US pooled means of 2013 covers none of these wards." });
    expect(predict(us2013PooledMeans, "infections", []).predicted.value).toBeNull();
  });
});

describe("the facility's own earlier period", () => {
  const counts = [
    { ward: "3E", infections: 4, catheterDays: 2_000, patientDays: 5_000 },
    { ward: "4W", infections: 0, catheterDays: 0, patientDays: 700 },
    { ward: "CLOSED", infections: 0, catheterDays: 0, patientDays: 0 },
  ];

  it("predicts by ward what it had then, and covers neither new wards nor those without days", () => {
    const own = earlierPeriod(origin, counts);
    const infections = predict(
      own,
      "infections",
      ["3E", "4W", "CLOSED"].map((code) => ward({ ward: code })),
    );
    expect(infections.predicted.value).toBe((4 / 2_000) * 1_000);
    expect(infections.uncovered).toEqual(["4W", "CLOSED"]);
    const days = predict(
      own,
      "catheter-days",
      ["3E", "4W"].map((code) => ward({ ward: code })),
    );
    expect(days.wards.map(({ predicted }) => predicted.value)).toEqual([800, 0]);
  });

  it("refuses counts that cannot be, and a period without any days", () => {
    const of = (change: object) => () => earlierPeriod(origin, [{ ...counts[0], ...change } as (typeof counts)[0]]);
    expect(of({ infections: 0.5 })).toThrow("infections must be a whole number");
    expect(of({ catheterDays: -1 })).toThrow("catheterDays must be");
    expect(of({ catheterDays: 5_001 })).toThrow("more catheter-days than patient-days");
    expect(() => earlierPeriod(origin, counts.slice(2))).toThrow("No ward has any patient-days");
  });
});

describe("models", () => {
  const stay = { "average length of stay": 20, "share of beds that are intensive care": 0.2 };

  it("are told term by term: the categories of a ward, the sum and the days", () => {
    const found = predict(longTermAcuteCare, "infections", [
      ward({ factors: { ...stay, "average length of stay": 27.8 } }),
    ]);
    expect(found.wards[0]?.steps.map(({ what, value }) => [what, value])).toEqual([
      ["intercept", -7.8086],
      ["average length of stay: 27.8 days or more", 1.1001],
      ["share of beds that are intensive care: 0.103 or more", 0],
      ["infections per catheter-day, e^sum", Math.exp(-7.8086 + 1.1001)],
      ["catheter-days", 1_000],
    ]);
  });

  it("cover no ward whose factors are not known or fit no category", () => {
    const reasonOf = (factors: WardInPeriod["factors"]) => {
      const { predicted } = predict(longTermAcuteCare, "infections", [ward({ factors })]).wards[0] ?? {};
      return predicted && "reason" in predicted ? predicted.reason : predicted?.value;
    };
    expect(reasonOf({})).toBe(
      "The average length of stay of 3E is not known, which US 2022 baseline, long-term acute care asks for.",
    );
    expect(reasonOf({ ...stay, "average length of stay": "long" })).toContain(
      "no category for the average length of stay long",
    );
    expect(reasonOf({ ...stay, "average length of stay": Number.NaN })).toContain("no category");
    expect(predict(longTermAcuteCare, "catheter-days", [ward({ factors: stay })]).wards[0]?.predicted).toMatchObject({
      reason: "US 2022 baseline, long-term acute care predicts infections, not catheter-days.",
    });
  });

  it("of catheter-days have a logit link: a share of the patient-days that never passes them", () => {
    const model: ModelBaseline = {
      ...{ kind: "model", origin, predicts: "catheter-days", intercept: 0 },
      terms: [
        {
          factor: "teaching",
          categories: [
            { name: "major", band: null, coefficient: Math.log(3), standardError: null },
            { name: "none", band: null, coefficient: 0, standardError: null },
          ],
        },
      ],
    };
    const of = (teaching: string) =>
      figureOf(predict(model, "catheter-days", [ward({ factors: { teaching } })]).predicted);
    // Odds of 3 are a share of 3/4, odds of 1 a half.
    expect([of("major"), of("none")].map((days) => Number(days.toFixed(9)))).toEqual([1_500, 1_000]);
  });

  it("never give Infinity", () => {
    const model: ModelBaseline = { kind: "model", origin, predicts: "infections", intercept: 800, terms: [] };
    expect(predict(model, "infections", [ward({})]).wards[0]?.predicted).toMatchObject({ value: null });
  });
});

describe("what cannot be used is refused", () => {
  it("with days that cannot be, and with a faulty baseline", () => {
    expect(() => predict(us2013PooledMeans, "infections", [ward({ catheterDays: -1 })])).toThrow(
      "catheterDays must be",
    );
    const faulty: PooledBaseline = { ...us2013PooledMeans, rates: [] };
    expect(() => predict(faulty, "infections", [ward({})])).toThrow("The baseline has no rates.");
  });
});
