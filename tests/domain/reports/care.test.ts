import { describe, expect, it } from "vitest";
import { sheet as sheetShape } from "../../../shared/sheet.ts";
import type { MonthNecessity } from "../../../src/domain/necessity/month-necessity.ts";
import { careSheet, type WardCare } from "../../../src/domain/reports/care.ts";
import { facts } from "./facts.ts";

const figures = [
  ...["reviewsDue", "reviewsInTime", "reviewsLate", "reviewsMissed", "reviewsOverdue", "daysPastThreshold"],
  ...["daysWithoutIndication", "daysOutsidePolicy", "daysDoubtful", "careChecks", "careChecksKept"],
  ...["careChecksBroken", "careChecksIncomplete"],
] as (keyof MonthNecessity)[];

/** A ward with so many rows behind each figure; none unless told otherwise. */
function ward(
  code: string,
  counts: Partial<Record<keyof MonthNecessity, number>> = {},
  said: Partial<WardCare> = {},
): WardCare {
  const rows = (count: number) => Array.from({ length: count }, (_, i) => ({ catheterId: i + 1, day: 20_000 + i }));
  const necessity = Object.fromEntries(figures.map((name) => [name, rows(counts[name] ?? 0)]));
  return {
    ...{
      wardId: 1,
      code,
      name: `Ward ${code}`,
      catheterDays: 0,
      manualCountsMissing: null,
      manualCounts: [],
      absencesUnknown: 0,
    },
    necessity: necessity as unknown as MonthNecessity,
    ...said,
  };
}

const { facility, first, last, asOf } = facts();
const sheetOf = (...wards: WardCare[]) => careSheet({ facility, first, last, asOf, wards });
const compliance = (row: readonly unknown[] | null) => row?.at(-1);

describe("the sheet of reviews and care", () => {
  it("says where and when, and has the shape of every sheet", () => {
    const sheet = sheetOf(ward("A"));
    expect(sheetShape.parse(sheet)).toEqual(sheet);
    expect(sheet).toMatchObject({
      id: "care",
      title: "Reviews and care of catheters, Alder Bay Hospital",
      period: "2026-10-01 to 2026-10-31",
      asOf: "2026-11-03T08:00:00.000Z",
    });
    for (const row of [...sheet.rows, sheet.total]) expect(row).toHaveLength(sheet.columns.length);
  });

  it("counts the rows behind each figure, each under its column", () => {
    const counts = Object.fromEntries(figures.map((name, i) => [name, i + 1]));
    const said = { catheterDays: 40, manualCountsMissing: 50, absencesUnknown: 60 };
    const { columns, rows } = sheetOf(ward("A", counts, said));
    const byKey = Object.fromEntries(columns.map(({ key }, i) => [key, rows[0]?.[i]]));
    expect(byKey).toEqual({
      ...{ ward: "A", name: "Ward A", catheter_days: 40 },
      ...{ reviews_due: 1, reviews_in_time: 2, reviews_late: 3, reviews_missed: 4, reviews_overdue: 5 },
      ...{ past_threshold: 6, no_indication: 7, outside_policy: 8, not_confirmed: 9 },
      ...{ care_checks: 10, all_items_kept: 11, counts_missing: 50, absences_unknown: 60, bundle_compliance: 11 / 10 },
    });
  });

  it("sums wards, and takes the compliance of all from the sums", () => {
    const { rows, total } = sheetOf(
      ward("A", { careChecks: 10, careChecksKept: 5 }, { catheterDays: 7 }),
      ward("B", { careChecks: 30, careChecksKept: 27 }, { catheterDays: 8 }),
    );
    expect(rows.map(compliance)).toEqual([0.5, 0.9]);
    // Pooled, 32 of 40, and no mean of the two ratios.
    expect(compliance(total)).toBe(0.8);
    expect(total?.slice(0, 3)).toEqual(["All units", "", 15]);
  });

  it("has no compliance without a check, and 0 when none was kept", () => {
    const { rows, total } = sheetOf(ward("A"), ward("B", { careChecks: 2 }));
    expect(rows.map(compliance)).toEqual([null, 0]);
    expect(compliance(total)).toBe(0);
    expect(compliance(sheetOf(ward("A")).total)).toBeNull();
  });

  it("shows counts that nobody makes as missing and not as zero, and sums those that are known", () => {
    const at = sheetOf().columns.findIndex(({ key }) => key === "counts_missing");
    const counted = (...list: (number | null)[]) =>
      sheetOf(...list.map((manualCountsMissing) => ward("A", {}, { manualCountsMissing })));
    expect(counted(null, 4, 3).rows.map((row) => row[at])).toEqual([null, 4, 3]);
    expect(counted(null, 4, 3).total?.[at]).toBe(7);
    expect(counted(null, null).total?.[at]).toBeNull();
    expect(counted(0).total?.[at]).toBe(0);
  });

  it("has no total without wards", () => {
    expect(sheetOf()).toMatchObject({ rows: [], total: null });
  });
});
