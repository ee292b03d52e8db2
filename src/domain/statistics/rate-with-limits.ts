import type { Ratio } from "../counting/ratio.ts";
import { refuseUnlessAmount, refuseUnlessCount, refuseUnlessLevel, refuseUnlessPositive } from "./check-figures.ts";
import type { LimitMethod } from "./interval.ts";
import { type LimitChoice, poissonLimits } from "./poisson-limits.ts";

/** A rate with its limits, per the number of days that was asked for, unrounded. */
export interface RateWithLimits {
  readonly rate: Ratio;
  readonly lower: Ratio;
  readonly upper: Ratio;
  readonly level: number;
  readonly method: LimitMethod | null;
}

/**
 * Events per so many days (1,000 catheter-days, 10,000 patient-days) with the limits of the Poisson count divided by the
 * days, which are taken as known. Days may be an estimate. All null, with the reason, where there are no days, even when
 * events are given. A Problem for figures that cannot be. Error: that of the limits' method.
 * Source: the rate as in CDC Patient Safety Component Manual, chapter 7; limits as for a SIR.
 */
export function rateWithLimits(input: {
  events: number;
  days: number;
  /** The days of which the rate tells the events: 1,000 or 10,000. */
  per: number;
  level: number;
  by: LimitChoice;
}): RateWithLimits {
  const { events, days, per, level, by } = input;
  refuseUnlessCount("events", events);
  refuseUnlessAmount("days", days);
  refuseUnlessPositive("per", per);
  refuseUnlessLevel(level);
  if (days === 0) {
    const none = { value: null, reason: "There are no days, so there is no rate." };
    return { rate: none, lower: none, upper: none, level, method: null };
  }
  const { lower, upper, method } = poissonLimits({ observed: events, level, by });
  const rated = (count: number): Ratio => ({ value: (count / days) * per });
  return { rate: rated(events), lower: rated(lower), upper: rated(upper), level, method };
}
