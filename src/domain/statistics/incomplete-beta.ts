import { binomialDensity } from "./binomial.ts";
import type { Tails } from "./incomplete-gamma.ts";

/**
 * The regularized incomplete beta function of p for a, b > 0 (below) and its complement (above); q = 1 - p is given
 * beside p so that a small one keeps its digits.
 * Method: the continued fraction by Lentz' method on the side where it converges fast, with Loader's saddle point form
 * as its factor. Special cases: p = 0 and q = 0. Error: below 1e-12, relative, of either part above 1e-250, for a and b
 * of 0.5 to 500,000 (tests hold it against mpmath).
 * Source: NIST Digital Library of Mathematical Functions, 8.17.22.
 */
export function incompleteBeta(a: number, b: number, at: { p: number; q: number }): Tails {
  if (at.p === 0) return { below: 0, above: 1 };
  if (at.q === 0) return { below: 1, above: 0 };
  if (at.p < (a + 1) / (a + b + 2)) {
    const below = Math.min(1, sideOf(a, b, at));
    return { below, above: 1 - below };
  }
  const above = Math.min(1, sideOf(b, a, { p: at.q, q: at.p }));
  return { below: 1 - above, above };
}

/** p^a q^b / (a B(a, b)) times the continued fraction. */
function sideOf(a: number, b: number, at: { p: number; q: number }): number {
  const factor = (binomialDensity(a, a + b, at) * b) / (a + b);
  return factor * fraction(a, b, at.p);
}

function fraction(a: number, b: number, p: number): number {
  let c = 1;
  let d = 1 / nonzero(1 - ((a + b) * p) / (a + 1));
  let h = d;
  for (let m = 1; ; m++) {
    const even = (m * (b - m) * p) / ((a + 2 * m - 1) * (a + 2 * m));
    d = 1 / nonzero(1 + even * d);
    c = nonzero(1 + even / c);
    h *= d * c;
    const odd = (-(a + m) * (a + b + m) * p) / ((a + 2 * m) * (a + 2 * m + 1));
    d = 1 / nonzero(1 + odd * d);
    c = nonzero(1 + odd / c);
    const step = d * c;
    h *= step;
    if (Math.abs(step - 1) < 1e-15) return h;
  }
}

function nonzero(value: number): number {
  return Math.abs(value) < 1e-300 ? 1e-300 : value;
}
