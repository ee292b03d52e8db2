import { deviance, stirlingError } from "./deviance.ts";

/**
 * n! / (x! (n - x)!) p^x q^(n - x) with Gamma functions in place of factorials, for 0 <= x <= n, where q = 1 - p is given
 * beside p so that a small one keeps its digits. For whole numbers it is the binomial probability of x of n.
 * Method: Loader's saddle point form. Special cases: x = 0 and x = n. Error: as poissonDensity.
 * Source: C. Loader, "Fast and accurate computation of binomial probabilities", 2000 (from memory).
 */
export function binomialDensity(x: number, n: number, { p, q }: { p: number; q: number }): number {
  if (x < 0 || x > n) return 0;
  if (p === 0) return x === 0 ? 1 : 0;
  if (q === 0) return x === n ? 1 : 0;
  if (x === 0) return Math.exp(n * logOf(q, p));
  if (x === n) return Math.exp(n * logOf(p, q));
  const rest = n - x;
  const exponent =
    stirlingError(n) - stirlingError(x) - stirlingError(rest) - deviance(x, n * p) - deviance(rest, n * q);
  return Math.exp(exponent) * Math.sqrt(n / (2 * Math.PI * x * rest));
}

/** ln(part), by way of its complement where that is the smaller one. */
function logOf(part: number, complement: number): number {
  return complement < 0.5 ? Math.log1p(-complement) : Math.log(part);
}
