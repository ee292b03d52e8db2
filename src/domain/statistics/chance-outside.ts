import type { FunnelPlace } from "./funnel-limits.ts";
import { exactFunnelLimit } from "./funnel-limits.ts";
import { poissonAtMost } from "./poisson.ts";

/**
 * The probability with which chance alone puts a rate outside a pair of interpolated funnel limits that leave `tail` on
 * either side: for few events it is not 2 x tail, because a count is whole and the line between two counts is not.
 * A Problem for a denominator or target that is not above zero. Error: below 1e-12, absolute.
 */
export function chanceOutside({
  tail,
  ...place
}: Omit<FunnelPlace, "probability"> & { readonly tail: number }): number {
  const mean = place.target * place.denominator;
  const count = (probability: number) => exactFunnelLimit({ ...place, probability }).interpolated * place.denominator;
  // A count that meets a limit is inside; rounding must not put it outside.
  const below = poissonAtMost(Math.ceil(count(tail) - 1e-9) - 1, mean);
  return below + 1 - poissonAtMost(Math.floor(count(1 - tail) + 1e-9), mean);
}
