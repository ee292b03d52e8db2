import { deviance, stirlingError } from "./deviance.ts";

/**
 * mean^x e^-mean / Gamma(x + 1): the probability of exactly x events, for whole x, where `mean` (>= 0) are expected;
 * for other x >= 0 the factor that the incomplete gamma function needs.
 * Method: Loader's saddle point form. Special cases: x = 0 gives e^-mean; mean = 0 gives 1 at x = 0 and 0 elsewhere.
 * Error: below 1e-13, relative, where the logarithm of the result is above -100; it grows with that logarithm.
 * Source: C. Loader, "Fast and accurate computation of binomial probabilities", 2000 (from memory).
 */
export function poissonDensity(x: number, mean: number): number {
  if (mean === 0) return x === 0 ? 1 : 0;
  if (x === 0) return Math.exp(-mean);
  return Math.exp(-stirlingError(x) - deviance(x, mean)) / Math.sqrt(2 * Math.PI * x);
}
