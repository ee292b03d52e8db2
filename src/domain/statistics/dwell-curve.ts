import { kaplanMeier, type SurvivalStep } from "./kaplan-meier.ts";
import { type SurvivalQuantile, survivalQuantile } from "./survival-quantile.ts";

/** How the watching of a catheter's time in place ended. */
export type DwellEnd = "removed" | "in-place" | "died" | "discharged";

/** The time of one patient with a catheter, exchanges included: an exchange ends nothing. */
export interface Dwell {
  readonly days: number;
  readonly end: DwellEnd;
}

/** The dwell of a ward's catheters. */
export interface DwellCurve {
  readonly steps: readonly SurvivalStep[];
  /** Days by which half were removed. */
  readonly median: SurvivalQuantile;
  readonly removed: number;
  /** Those of which only "at least so many days" is known: still in place, died or discharged with the catheter. */
  readonly censored: number;
}

/**
 * The share of catheters still in place over their days in place, and the median. A removal is the event; a catheter
 * still in place, a death and a discharge with it are censored, because its removal was not seen.
 * Limits of the median: 0.95, on the log-log scale. Special cases and source: {@link kaplanMeier}.
 */
export function dwellCurve(dwells: readonly Dwell[]): DwellCurve {
  const steps = kaplanMeier(dwells.map(({ days, end }) => ({ time: days, isEvent: end === "removed" })));
  const removed = dwells.filter(({ end }) => end === "removed").length;
  const median = survivalQuantile(steps, { fraction: 0.5, level: 0.95, scale: "log-log" });
  return { steps, median, removed, censored: dwells.length - removed };
}
