import { incompleteGamma } from "./incomplete-gamma.ts";
import { poissonDensity } from "./poisson-density.ts";

/** The probabilities of fewer events than a count, of exactly it, and of more, where `mean` are expected. */
export interface PoissonParts {
  readonly fewer: number;
  readonly same: number;
  readonly more: number;
}

/**
 * The three parts of a Poisson distribution at a whole count. Both tails keep their own precision, so a small one is
 * never 1 minus a large one.
 * Method: the incomplete gamma function at shape count + 1; the near tail plus or minus {@link poissonDensity}.
 * Special cases: count 0 has nothing below; mean 0 has everything at 0. Error: as {@link incompleteGamma}.
 */
export function poissonParts(count: number, mean: number): PoissonParts {
  const same = poissonDensity(count, mean);
  if (count === 0) return { fewer: 0, same, more: -Math.expm1(-mean) };
  if (mean < count) {
    // The far tail is the upper one: P(X > count) from its own series.
    const more = incompleteGamma(count + 1, mean).below;
    return { fewer: Math.max(0, 1 - more - same), same, more };
  }
  const fewer = incompleteGamma(count, mean).above;
  return { fewer, same, more: Math.max(0, 1 - fewer - same) };
}

/** P(X <= count) where `mean` are expected; -1 or less gives 0. Error: as {@link incompleteGamma}. */
export function poissonAtMost(count: number, mean: number): number {
  return count < 0 ? 0 : incompleteGamma(count + 1, mean).above;
}
