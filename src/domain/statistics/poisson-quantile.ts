import { normalUpperQuantile } from "./normal.ts";
import { poissonAtMost } from "./poisson.ts";

/**
 * The smallest count whose probability of not being exceeded, P(X <= count), reaches `probability` (over 0, under 1),
 * where `mean` (>= 0) are expected.
 * Method: a normal guess with Cornish and Fisher's first correction, then steps of one count. Special case: mean 0
 * gives 0.
 */
export function poissonQuantile(probability: number, mean: number): number {
  const z = normalUpperQuantile(1 - probability);
  let count = Math.max(0, Math.round(mean + z * Math.sqrt(mean) + (z * z - 1) / 6));
  while (count > 0 && poissonAtMost(count - 1, mean) >= probability) count--;
  while (poissonAtMost(count, mean) < probability) count++;
  return count;
}
