import type { Ratio } from "../counting/ratio.ts";
import type { SurvivalStep } from "./kaplan-meier.ts";
import { type SurvivalScale, survivalLimits } from "./survival-limits.ts";

/** A quantile of a survival time with its limits; what the curve does not reach is null, with the reason. */
export interface SurvivalQuantile {
  readonly time: Ratio;
  readonly lower: Ratio;
  readonly upper: Ratio;
}

/**
 * The time by which a fraction (over 0, under 1) has ended, so 0.5 for the median, with limits from where the curve's
 * pointwise limits cross it.
 * Convention: the first time at which the curve is below 1 - fraction; where it meets that value exactly and stays, the
 * middle between that time and the next event (as R's survfit does, others take the later or earlier time).
 * Null, with the reason, where the curve never gets there. Source: R package survival 3.5-3.
 */
export function survivalQuantile(
  steps: readonly SurvivalStep[],
  { fraction, level, scale }: { fraction: number; level: number; scale: SurvivalScale },
): SurvivalQuantile {
  const limits = survivalLimits(steps, { level, scale });
  const events = steps.flatMap((step, at) => (step.events > 0 ? [{ ...step, limits: limits[at] ?? null }] : []));
  const crossing = (value: (step: (typeof events)[number]) => number): Ratio => crossingOf(events, value, 1 - fraction);
  return {
    time: crossing(({ survival }) => survival),
    lower: crossing(({ limits: at }) => at?.lower ?? 0),
    upper: crossing(({ limits: at }) => at?.upper ?? 0),
  };
}

/** Products of fractions meet a half only up to rounding. */
const rounding = 1e-9;

function crossingOf<Step extends { time: number }>(
  events: readonly Step[],
  value: (step: Step) => number,
  wanted: number,
): Ratio {
  const at = events.findIndex((step) => value(step) <= wanted + rounding);
  const found = events[at];
  if (!found) return { value: null, reason: "The curve does not fall so far: too many are still in place." };
  const next = events[at + 1];
  const meets = Math.abs(value(found) - wanted) <= rounding;
  return { value: meets && next ? (found.time + next.time) / 2 : found.time };
}
