import type { Month } from "../../shared/day.ts";
import type { limitRules } from "../../shared/month-report.ts";
import type { Instant } from "../domain/days/day-number.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";
import { daysOfMonths, touchDays } from "./trace.ts";

/** What a model asks for, of one ward or of every ward. */
export interface FactorRow {
  readonly wardId: number | null;
  readonly factor: string;
  readonly value: string | number;
}

/** With what months are compared from a month on. */
export interface ComparisonRow {
  readonly number: number;
  readonly fromMonth: Month;
  readonly infectionBaselineId: number | null;
  readonly utilizationBaselineId: number | null;
  readonly goal: number | null;
  readonly limits: keyof typeof limitRules;
  readonly factors: readonly FactorRow[];
  readonly reason: string;
  readonly recordedAt: Instant;
  readonly recordedBy: number;
}

/** Every version of a facility, by number. */
export async function comparisons(read: Read, facilityId: number): Promise<ComparisonRow[]> {
  const rows = await read.db.comparison.findMany({ where: { facilityId }, orderBy: { number: "asc" } });
  return rows.map(({ facilityId: _, fromMonth, limits, factors, recordedAt, ...row }) => ({
    ...row,
    fromMonth: fromMonth as Month,
    limits: limits as ComparisonRow["limits"],
    factors: JSON.parse(factors) as FactorRow[],
    recordedAt: recordedAt.getTime(),
  }));
}

/** Adds the next version. */
export async function addComparison(
  tx: Tx,
  by: Recording,
  comparison: Omit<ComparisonRow, "recordedAt" | "recordedBy">,
): Promise<void> {
  touchDays(tx, daysOfMonths({ from: comparison.fromMonth, to: null }));
  const { factors, ...said } = comparison;
  const recorded = { recordedAt: new Date(by.now), recordedBy: by.personId };
  await tx.db.comparison.create({
    data: { ...said, facilityId: by.facilityId, factors: JSON.stringify(factors), ...recorded },
  });
}
