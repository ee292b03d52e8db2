import { logGamma, logSqrtTwoPi } from "./log-gamma.ts";

/**
 * x ln(x / mean) + mean - x for x >= 0 and mean > 0, without the loss of digits that the plain form has where both are
 * nearly equal. Special case: x = 0 gives mean.
 * Source: C. Loader, "Fast and accurate computation of binomial probabilities", 2000 (from memory). Error: a few units
 * in the last place of the result.
 */
export function deviance(x: number, mean: number): number {
  if (x === 0) return mean;
  if (Math.abs(x - mean) >= 0.1 * (x + mean)) return x * Math.log(x / mean) + mean - x;
  const v = (x - mean) / (x + mean);
  let sum = (x - mean) * v;
  let term = 2 * x * v;
  for (let j = 3; ; j += 2) {
    term *= v * v;
    const next = sum + term / j;
    if (next === sum) return sum;
    sum = next;
  }
}

/**
 * What Stirling's formula lacks of ln(Gamma(x + 1)), for x > 0: ln(Gamma(x + 1)) - ln(sqrt(2 pi x)) - x ln(x) + x.
 * Method: Stirling's series from 15 upwards, below it the difference itself.
 * Source: NIST Digital Library of Mathematical Functions, 5.11.1. Error: at most 3e-14, absolute.
 */
export function stirlingError(x: number): number {
  if (x < 15) return ofWhole[x] ?? byLogGamma(x);
  const q = 1 / (x * x);
  return (1 / 12 - q * (1 / 360 - q * (1 / 1260 - q * (1 / 1680 - q * (1 / 1188 - (q * 691) / 360360))))) / x;
}

function byLogGamma(x: number): number {
  return logGamma(x + 1) - (x + 0.5) * Math.log(x) + x - logSqrtTwoPi;
}

/** Those of the whole numbers below 15, which most counts need; of 0 there is none. */
const ofWhole = Array.from({ length: 15 }, (_, x) => (x === 0 ? undefined : byLogGamma(x)));
