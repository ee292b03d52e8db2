import { binomialDensity } from "./binomial.ts";
import { incompleteBeta } from "./incomplete-beta.ts";
import { type Proportion, type ProportionLimits, withoutLimits } from "./proportion.ts";
import { solveProbability } from "./solve-probability.ts";

/**
 * Exact limits of a proportion: at least so many would be found at the lower one, at most so many at the upper one, with
 * probability (1 - level) / 2.
 * Method: Newton's steps on the binomial tails. Special cases: a part of 0 has the lower limit 0, a part that is the
 * whole the upper limit 1; a whole of 0, or parts that are estimates, have no limits, with the reason. A Problem for
 * figures that cannot be. Error: below 1e-11, relative.
 * Source: Clopper and Pearson, Biometrika 1934;26:404-413.
 */
export function clopperPearsonLimits(input: Proportion): ProportionLimits {
  const none = withoutLimits(input);
  if (none) return none;
  const { part, whole, level } = input;
  const tail = (1 - level) / 2;
  const atLeast = (at: { p: number; q: number }) => ({
    value: incompleteBeta(part, whole - part + 1, at).below,
    slope: whole * binomialDensity(part - 1, whole - 1, at),
  });
  const atMost = (at: { p: number; q: number }) => ({
    value: incompleteBeta(part + 1, whole - part, at).above,
    slope: -whole * binomialDensity(part, whole - 1, at),
  });
  return {
    lower: { value: part === 0 ? 0 : solveProbability(atLeast, tail, "rises").p },
    upper: { value: part === whole ? 1 : solveProbability(atMost, tail, "falls").p },
  };
}
