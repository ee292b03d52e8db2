import { refuseUnlessCount, refuseUnlessPositive } from "./check-figures.ts";
import { poissonParts } from "./poisson.ts";

/**
 * The two-sided mid-P value of a Poisson count where `predicted` are expected: twice the smaller tail, in each of which
 * the observed count weighs half; at most 1.
 * Special case: 0 observed gives e^-predicted. A Problem for anything but a count, or a predicted number that is not
 * above zero. Source: the public statistical routines of the CDC (two-sided p is twice one tail).
 * Error: below 1e-12, relative, up to 50,000 observed (1e-9 up to 3,000,000) and down to p = 1e-250.
 */
export function midPTest({ observed, predicted }: { observed: number; predicted: number }): number {
  refuseUnlessCount("observed", observed);
  refuseUnlessPositive("predicted", predicted);
  const { fewer, same, more } = poissonParts(observed, predicted);
  return Math.min(1, 2 * Math.min(fewer + same / 2, more + same / 2));
}
