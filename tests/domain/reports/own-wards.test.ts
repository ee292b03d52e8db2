import { expect, it } from "vitest";
import type { Sheet } from "../../../shared/sheet.ts";
import { ofOwnWards } from "../../../src/domain/reports/own-wards.ts";

const sheet: Sheet = {
  id: "month",
  title: "Days",
  period: "2026-11-01 to 2026-11-30",
  asOf: "2026-11-20T15:00:00.000Z",
  sources: [],
  columns: [],
  rows: [["3E", 22]],
  total: ["All units", 22],
  cautions: ["Counted at noon."],
};

it("a sheet of some wards only says so first, and names its total for what it is", () => {
  const own = ofOwnWards(sheet);
  expect(own.total).toEqual(["Your units", 22]);
  expect(own.cautions).toHaveLength(2);
  expect(own.cautions[0]).toContain("Only your units are shown");
  expect(own.rows).toEqual(sheet.rows);
  expect(sheet.total).toEqual(["All units", 22]);
});

it("a sheet without a total gets none", () => {
  expect(ofOwnWards({ ...sheet, total: null }).total).toBeNull();
});
