import { describe, expect, it } from "vitest";
import { sheet as sheetShape } from "../../../shared/sheet.ts";
import { wardDaysSheet } from "../../../src/domain/reports/ward-days.ts";
import { day, facts, ward } from "./facts.ts";

describe("the sheet of ward days", () => {
  it("has a row for each ward and day with a patient, in that order, and no total", () => {
    const on = (text: string, patientDays: number, catheterDays: number) => ({
      day: day(text),
      patientDays,
      catheterDays,
    });
    const sheet = wardDaysSheet(
      facts({
        wards: [
          ward("A", { days: [on("2026-10-01", 3, 1), on("2026-10-03", 2, 0)] }),
          ward("B", { days: [on("2026-10-02", 1, 1)] }),
          ward("C"),
        ],
      }),
    );
    expect(sheetShape.parse(sheet)).toEqual(sheet);
    expect(sheet.columns.map((column) => column.key)).toEqual(["ward", "day", "patient_days", "catheter_days"]);
    expect(sheet.rows).toEqual([
      ["A", "2026-10-01", 3, 1],
      ["A", "2026-10-03", 2, 0],
      ["B", "2026-10-02", 1, 1],
    ]);
    expect(sheet.total).toBe(null);
    expect(sheet).toMatchObject({ id: "ward-days", period: "2026-10-01 to 2026-10-31" });
    expect(sheet.cautions[0]).toContain("00:00, America/New_York");
  });
});
