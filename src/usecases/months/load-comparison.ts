import type { Month } from "../../../shared/day.ts";
import { defaultLimits, limitRule } from "../../../shared/month-report.ts";
import { baselineOfRows } from "../../domain/baselines/stored-baseline.ts";
import type { MonthComparison, NumberedBaseline } from "../../domain/reports/figure-facts.ts";
import { baselines } from "../../store/baselines.ts";
import { comparisons, type FactorRow } from "../../store/comparisons.ts";
import { signatures, signedText } from "../../store/signed-months.ts";
import type { Read } from "../../store/store.ts";

/** With what a month is compared, and what models are told of wards. */
export interface LoadedComparison {
  readonly comparison: MonthComparison;
  readonly factors: readonly FactorRow[];
}

/**
 * The version in force for a month: the highest number whose first month is not later. Without one, no baseline, and
 * the usual rule of limits; a month that is signed keeps the rule that it was signed with.
 */
export async function loadComparison(read: Read, facilityId: number, month: Month): Promise<LoadedComparison> {
  const found = (await comparisons(read, facilityId)).findLast(({ fromMonth }) => fromMonth <= month);
  if (!found) {
    const limits = (await signedLimits(read, facilityId, month)) ?? defaultLimits;
    return { comparison: { infections: null, catheterDays: null, goal: null, limits }, factors: [] };
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

/** The rule of limits in the latest signed text of a month: a later default must not make it differ. */
async function signedLimits(read: Read, facilityId: number, month: Month): Promise<MonthComparison["limits"] | null> {
  const latest = (await signatures(read, facilityId, month)).at(-1);
  const text = latest ? await signedText(read, facilityId, latest) : null;
  return text === null ? null : limitRule.parse((JSON.parse(text) as { limits?: unknown }).limits);
}
