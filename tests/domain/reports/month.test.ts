import { describe, expect, it } from "vitest";
import { sheet as sheetShape } from "../../../shared/sheet.ts";
import { monthSheet } from "../../../src/domain/reports/month.ts";
import { facts, ward } from "./facts.ts";

describe("the sheet of a month", () => {
  it("says where and when, and has the shape of every sheet", () => {
    const sheet = monthSheet(facts());
    expect(sheetShape.parse(sheet)).toEqual(sheet);
    expect(sheet).toMatchObject({
      id: "month",
      title: "Patient-days and catheter-days, Alder Bay Hospital",
      period: "2026-10-01 to 2026-10-31",
      asOf: "2026-11-03T08:00:00.000Z",
    });
    expect(sheet.columns.map((column) => column.key)).toEqual([
      ...["ward", "name", "patient_days", "catheter_days", "utilization", "note"],
    ]);
  });

  it("has a row a ward, and a total whose ratio comes from the sums", () => {
    const { rows, total } = monthSheet(
      facts({
        wards: [ward("A", { patientDays: 100, catheterDays: 50 }), ward("B", { patientDays: 300, catheterDays: 30 })],
      }),
    );
    expect(rows).toEqual([
      ["A", "Ward A", 100, 50, 0.5, ""],
      ["B", "Ward B", 300, 30, 0.1, ""],
    ]);
    // Pooled, not a mean of the ratios: 80 / 400. CDC Patient Safety Component Manual, chapter 7 (from memory).
    expect(total).toEqual(["All units", "", 400, 80, 0.2, ""]);
  });

  it("has no ratio where there are no patient-days, and zero days as zero", () => {
    const { rows, total } = monthSheet(facts({ wards: [ward("A")] }));
    expect(rows).toEqual([["A", "Ward A", 0, 0, null, ""]]);
    expect(total).toEqual(["All units", "", 0, 0, null, ""]);
  });

  it("shows a ward of which nobody said what it is as missing, and leaves it out of the total", () => {
    const unknown = ward("X", { inpatient: "unknown", patientDays: 7, catheterDays: 7 });
    const { rows, total } = monthSheet(facts({ wards: [ward("A", { patientDays: 10, catheterDays: 1 }), unknown] }));
    expect(rows[1]).toEqual(["X", "Ward X", null, null, null, "not counted: setting not given"]);
    expect(total).toEqual(["All units", "", 10, 1, 0.1, ""]);
  });

  it("has a total of missing figures, never of zero, when no ward is counted", () => {
    const total = ["All units", "", null, null, null, "no unit is counted"];
    const unknown = ward("X", { inpatient: "unknown", patientDays: 7, catheterDays: 7 });
    expect(monthSheet(facts({ wards: [unknown] })).total).toEqual(total);
    expect(monthSheet(facts()).total).toEqual(total);
  });

  it("says of a ward that it was only named in moves, or was inpatient on some days", () => {
    const wards = [
      ward("A", { namedOnly: true }),
      ward("B", { inpatient: "partly" }),
      ward("C", { namedOnly: true, inpatient: "unknown" }),
    ];
    expect(monthSheet(facts({ wards })).rows.map((row) => row[5])).toEqual([
      "named only in moves, counted as inpatient",
      "inpatient on some days only",
      "not counted: setting not given",
    ]);
  });
});
