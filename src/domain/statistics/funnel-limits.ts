import { refuseUnlessAmount, refuseUnlessPositive } from "./check-figures.ts";
import { normalUpperQuantile } from "./normal.ts";
import { poissonAtMost } from "./poisson.ts";
import { poissonDensity } from "./poisson-density.ts";
import { poissonQuantile } from "./poisson-quantile.ts";

/** A limit of a funnel at one denominator. */
export interface FunnelLimit {
  /** On the count that is really possible. */
  readonly discrete: number;
  /** Between counts, so that the line is smooth and cuts off the probability asked for. */
  readonly interpolated: number;
}

/** The place on a funnel: its target rate, a denominator (days, or predicted infections), and a probability below. */
export interface FunnelPlace {
  readonly target: number;
  readonly denominator: number;
  /** The probability of lying below the limit, such as 0.025 or 0.999. */
  readonly probability: number;
}

/**
 * The limit below which a rate lies with a given probability where the target rate is true: r / denominator, r being the
 * smallest count with P(X <= r) >= probability, and interpolated (r - alpha) / denominator with alpha = (P(X <= r) -
 * probability) / P(X = r), never below 0.
 * A Problem for a denominator or target that is not above zero.
 * Source: Spiegelhalter, Stat Med 2005;24:1185-1202, appendix A.1.1. Error: below 1e-12, relative.
 */
export function exactFunnelLimit({ target, denominator, probability }: FunnelPlace): FunnelLimit {
  refuseUnlessPositive("target", target);
  refuseUnlessPositive("denominator", denominator);
  const mean = target * denominator;
  const count = poissonQuantile(probability, mean);
  const alpha = (poissonAtMost(count, mean) - probability) / poissonDensity(count, mean);
  return { discrete: count / denominator, interpolated: Math.max(0, count - alpha) / denominator };
}

/**
 * The same limit by the normal approximation: target + z sqrt(target / denominator), never below 0. For comparison with
 * other work; small wards need the exact one.
 * Source: Spiegelhalter, Stat Med 2005;24:1185-1202. Error: below 1e-14, relative.
 */
export function normalFunnelLimit({ target, denominator, probability }: FunnelPlace): number {
  refuseUnlessAmount("target", target);
  refuseUnlessPositive("denominator", denominator);
  return Math.max(0, target - normalUpperQuantile(probability) * Math.sqrt(target / denominator));
}
