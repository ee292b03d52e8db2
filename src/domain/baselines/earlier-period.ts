import { refuse } from "../../../shared/problems.ts";
import { refuseUnlessAmount, refuseUnlessCount } from "../statistics/check-figures.ts";
import type { BaselineOrigin, PooledBaseline } from "./baseline.ts";

/** What one ward counted in the earlier period. */
export interface EarlierCounts {
  readonly ward: string;
  /** Null where the ward was not watched: it then has no rate. */
  readonly infections: number | null;
  readonly catheterDays: number;
  readonly patientDays: number;
}

/**
 * The facility's own earlier period as a baseline by ward. A ward without catheter-days, or that was not watched,
 * then has no rate; one without patient-days is left out, so that a comparison says that they are not covered.
 * Its own chance variation is not part of the limits of a ratio to it: say so beside a short period.
 * A Problem for figures that cannot be, or when no ward counted anything.
 */
export function earlierPeriod(origin: BaselineOrigin, counts: readonly EarlierCounts[]): PooledBaseline {
  const rates = counts.flatMap(({ ward, infections, catheterDays, patientDays }) => {
    if (infections !== null) refuseUnlessCount("infections", infections);
    refuseUnlessAmount("catheterDays", catheterDays);
    refuseUnlessAmount("patientDays", patientDays);
    if (catheterDays > patientDays) {
      refuse("figure-impossible", `${ward} has more catheter-days than patient-days`, { pointer: "/catheterDays" });
    }
    if (patientDays === 0) return [];
    const infectionsPerCatheterDay = catheterDays === 0 || infections === null ? null : infections / catheterDays;
    return [{ key: ward, infectionsPerCatheterDay, utilization: catheterDays / patientDays, note: null }];
  });
  if (rates.length === 0) refuse("baseline-unusable", "No ward has any patient-days in the earlier period.");
  return { kind: "pooled", origin, by: "ward", rates };
}
