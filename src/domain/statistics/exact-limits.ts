import { refuseUnlessCount, refuseUnlessLevel } from "./check-figures.ts";
import { gammaQuantile } from "./gamma-quantile.ts";
import type { CountAndLevel, Interval } from "./interval.ts";

/**
 * Exact limits of the mean of a Poisson count: the lower one would be reached or exceeded with probability
 * (1 - level) / 2, the upper one reached or undercut with the same.
 * Method: quantiles of the gamma distribution with shapes observed and observed + 1. Special case: 0 observed has the
 * lower limit 0 and keeps the two-sided upper one. A Problem for anything but a count or a level.
 * Source: F. Garwood, Biometrika 1936;28:437-442. Error: below 1e-11, relative, up to 50,000 observed.
 */
export function exactLimits({ observed, level }: CountAndLevel): Interval {
  refuseUnlessCount("observed", observed);
  refuseUnlessLevel(level);
  const tail = (1 - level) / 2;
  const lower = observed === 0 ? 0 : gammaQuantile(observed, tail, "below");
  return { lower, upper: gammaQuantile(observed + 1, tail, "above"), level, method: "exact" };
}
