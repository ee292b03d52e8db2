import type { Ratio } from "../counting/ratio.ts";
import { binomialDensity } from "./binomial.ts";
import { incompleteBeta } from "./incomplete-beta.ts";
import { type Probability, solveProbability, type TailOfProbability } from "./solve-probability.ts";

/** A count with what it is divided by: catheter-days, patient-days or predicted infections; above zero. */
export interface CountOver {
  readonly count: number;
  readonly over: number;
}

/** Two ratios tested against each other; a figure that cannot be given is null with its reason. */
export interface Comparison {
  /** The first / the second. */
  readonly ratio: Ratio;
  readonly lower: Ratio;
  readonly upper: Ratio;
  /** Two-sided, of no difference. */
  readonly p: Ratio;
  readonly level: number;
}

/**
 * The ratio of two Poisson rates, first / second, with limits and a two-sided p value (twice the smaller tail, at most
 * 1). Given the sum of both counts, the first is binomial with p = its share of what the rates are over; limits of p give
 * those of the ratio as p / (1 - p) times the quotient of the two. Callers check the figures.
 * `weight` is 1/2 for mid-P limits and p values, 1 for exact ones.
 * Special cases: no events at all give nothing but the reason; none in the first a ratio of 0 without lower limit; none
 * in the second no ratio and no upper limit, but a lower one and a p value.
 * Source: the public statistical routines of the CDC for two SIRs and two rates. Error: below 1e-11, relative.
 */
export function comparePoisson(input: {
  first: CountOver;
  second: CountOver;
  level: number;
  weight: 0.5 | 1;
}): Comparison {
  const { first, second, level, weight } = input;
  const all = first.count + second.count;
  if (all === 0) {
    const none = { value: null, reason: "There are no events on either side, so there is nothing to compare." };
    return { ratio: none, lower: none, upper: none, p: none, level };
  }
  const wanted = (1 - level) / 2;
  const scale = second.over / first.over;
  const asRatio = ({ p, q }: Probability): Ratio => ({ value: (p / q) * scale });
  const { up, down } = tails(first.count, all, weight);
  const lower =
    first.count === 0
      ? { value: null, reason: "There are no events on the first side, so the ratio has no lower limit." }
      : asRatio(solveProbability(up, wanted, "rises"));
  const share = { p: first.over / (first.over + second.over), q: second.over / (first.over + second.over) };
  const p = { value: Math.min(1, 2 * Math.min(up(share).value, down(share).value)) };
  if (second.count === 0) {
    const none = { value: null, reason: "There are no events on the second side, so there is no ratio to it." };
    return { ratio: none, lower, upper: none, p, level };
  }
  const ratio = { value: (first.count / second.count) * scale };
  return { ratio, lower, upper: asRatio(solveProbability(down, wanted, "falls")), p, level };
}

/** The chance of so many of all or more (up) and or fewer (down), with the count itself weighted, and their slopes. */
function tails(count: number, all: number, weight: number): { up: TailOfProbability; down: TailOfProbability } {
  const rest = all - count;
  // The slope of P(X >= k) over p is all times the probability of k - 1 of all - 1.
  const slope = (at: Probability) =>
    all * (weight * binomialDensity(count - 1, all - 1, at) + (1 - weight) * binomialDensity(count, all - 1, at));
  const slopeDown = (at: Probability) =>
    -all * (weight * binomialDensity(count, all - 1, at) + (1 - weight) * binomialDensity(count - 1, all - 1, at));
  return {
    up: (at) => {
      const more = rest === 0 ? 0 : incompleteBeta(count + 1, rest, at).below;
      return { value: more + weight * binomialDensity(count, all, at), slope: slope(at) };
    },
    down: (at) => {
      const fewer = count === 0 ? 0 : incompleteBeta(count, rest + 1, at).above;
      return { value: fewer + weight * binomialDensity(count, all, at), slope: slopeDown(at) };
    },
  };
}
