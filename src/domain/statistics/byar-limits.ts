import { refuseUnlessCount, refuseUnlessLevel } from "./check-figures.ts";
import type { CountAndLevel, Interval } from "./interval.ts";
import { normalUpperQuantile } from "./normal.ts";

/**
 * Byar's approximate limits of the mean of a Poisson count o: o (1 - 1 / (9 o) - z / (3 sqrt(o)))^3 and
 * (o + 1) (1 - 1 / (9 (o + 1)) + z / (3 sqrt(o + 1)))^3.
 * Special cases: 0 observed has the lower limit 0, as has a count so small that the cube would be of a negative number.
 * A Problem for anything but a count or a level.
 * Source: Breslow and Day, Statistical Methods in Cancer Research II, 1987, 2.12-2.13 (from memory), and the public
 * statistical routines of the CDC. Error: that of the normal quantile; against the exact limits the form itself is out
 * by under 1% from 10 observed on.
 */
export function byarLimits({ observed, level }: CountAndLevel): Interval {
  refuseUnlessCount("observed", observed);
  refuseUnlessLevel(level);
  const z = normalUpperQuantile((1 - level) / 2);
  const next = observed + 1;
  const lower = observed === 0 ? 0 : Math.max(0, observed * cube(observed, -z));
  return { lower, upper: next * cube(next, z), level, method: "byar" };
}

function cube(count: number, z: number): number {
  return (1 - 1 / (9 * count) + z / (3 * Math.sqrt(count))) ** 3;
}
