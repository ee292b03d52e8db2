import type { Month } from "../../shared/day.ts";
import { baselineOfRows } from "../domain/baselines/stored-baseline.ts";
import type { MonthComparison, NumberedBaseline } from "../domain/reports/figure-facts.ts";
import { baselines } from "../store/baselines.ts";
import { comparisons, type FactorRow } from "../store/comparisons.ts";
import type { Read } from "../store/store.ts";

/** With what a month is compared, and what models are told of wards. */
export interface LoadedComparison {
  readonly comparison: MonthComparison;
  readonly factors: readonly FactorRow[];
}

/** The version in force for a month: the highest number whose first month is not later. Without one, no baseline. */
export async function loadComparison(read: Read, facilityId: number, month: Month): Promise<LoadedComparison> {
  const found = (await comparisons(read, facilityId)).findLast(({ fromMonth }) => fromMonth <= month);
  if (!found) {
    const comparison = { infections: null, catheterDays: null, goal: null, limits: "mid-p-to-100" } as const;
    return { comparison, factors: [] };
  }
  const known = await baselines(read, facilityId);
  const numbered = (id: number | null): NumberedBaseline | null => {
    const row = known.find((baseline) => baseline.id === id);
    return row ? { baselineId: row.id, baseline: baselineOfRows(row) } : null;
  };
  const { goal, limits, factors } = found;
  const infections = numbered(found.infectionBaselineId);
  return { comparison: { infections, catheterDays: numbered(found.utilizationBaselineId), goal, limits }, factors };
}
