import { expect, it } from "vitest";
import { sheetCsv } from "../../src/csv/sheet-csv.ts";
import { monthSheet } from "../../src/domain/reports/month.ts";
import { facts, ward } from "../domain/reports/facts.ts";

it("has the rows of a sheet under the keys of its columns; what is missing is empty, and totals stay out", () => {
  const wards = [ward("A", { patientDays: 8, catheterDays: 3 }), ward("B", { inpatient: "unknown" })];
  expect(sheetCsv(monthSheet(facts({ wards })))).toBe(
    [
      "ward,name,patient_days,catheter_days,utilization,note",
      "A,Ward A,8,3,0.375,",
      "B,Ward B,,,,not counted: setting not given",
      "",
    ].join("\n"),
  );
});
