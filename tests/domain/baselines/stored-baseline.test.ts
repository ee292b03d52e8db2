import { describe, expect, it } from "vitest";
import { Problem } from "../../../shared/problems.ts";
import { baselineOfRows, type StoredBaseline } from "../../../src/domain/baselines/stored-baseline.ts";

const origin = {
  ...{ id: "1", name: "Alder Bay region", source: "Invented for this test", year: "2025", edition: "1" },
  ...{ definition: "Invented", population: "Invented hospitals" },
};
const made = (kind: StoredBaseline["kind"], ...rows: StoredBaseline["rows"]) => baselineOfRows({ kind, origin, rows });

describe("a baseline of rows", () => {
  it("is pooled rates, or a model of what its kind says", () => {
    expect(made("pooled", { ward_type: "medical", infections: "3", catheter_days: "1000" })).toMatchObject({
      rates: [{ key: "medical", infectionsPerCatheterDay: 0.003 }],
    });
    const intercept = { term: "intercept", coefficient: "-6" };
    expect(made("infection-model", intercept)).toMatchObject({ predicts: "infections", intercept: -6 });
    expect(made("utilization-model", intercept)).toMatchObject({ predicts: "catheter-days" });
  });

  it("is the wards' own counts, without a rate where a ward was not watched", () => {
    const own = { ward: "3E", infections: "3", catheter_days: "1000", patient_days: "4000" };
    expect(made("own-period", own, { ...own, ward: "4N", infections: "" })).toMatchObject({
      by: "ward",
      rates: [
        { key: "3E", infectionsPerCatheterDay: 0.003, utilization: 0.25 },
        { key: "4N", infectionsPerCatheterDay: null, utilization: 0.25 },
      ],
    });
    expect(() => made("own-period", { ...own, patient_days: "" })).toThrow("patient_days must be a whole number");
    expect(() => made("own-period", { ...own, infections: "1.5" })).toThrow("infections must be a whole number");
    expect(() => made("own-period", own, own)).toThrow("3E stands in the baseline more than once");
  });

  it("is refused with columns that nobody knows, and with terms that are missing", () => {
    expect(() => made("pooled", { ward_type: "medical", coefficient: "1" })).toThrow(
      "The column coefficient is not known",
    );
    expect(() => made("infection-model", { term: "beds", category: "all", coefficient: "1" })).toThrow(Problem);
  });
});
