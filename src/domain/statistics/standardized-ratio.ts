import type { Ratio } from "../counting/ratio.ts";
import { refuseUnlessAmount, refuseUnlessLevel } from "./check-figures.ts";
import type { LimitMethod } from "./interval.ts";
import { midPTest } from "./mid-p-test.ts";
import { type LimitChoice, poissonLimits } from "./poisson-limits.ts";

/** The fewest predicted for which a standardized ratio is given. Source: CDC, questions on analysis. */
const fewestPredicted = 1;

/** Observed and predicted, and how the limits are wanted. */
export interface StandardizedInput {
  readonly observed: number;
  readonly predicted: number;
  /** A fraction, such as 0.95. */
  readonly level: number;
  readonly by: LimitChoice;
}

/** A standardized ratio; a figure that cannot be given is null with its reason. Nothing is rounded. */
export interface StandardizedRatio {
  readonly observed: number;
  readonly predicted: number;
  readonly ratio: Ratio;
  readonly lower: Ratio;
  readonly upper: Ratio;
  /** The two-sided mid-P value against a ratio of 1. */
  readonly p: Ratio;
  readonly level: number;
  /** The method of the limits, or null where there are none. */
  readonly method: LimitMethod | null;
}

/** What is counted and what the ratio is called, for the reasons. */
export interface RatioWords {
  /** Such as `infections`. */
  readonly counted: string;
  /** Such as `SIR`. */
  readonly name: string;
}

/**
 * Observed / predicted with limits and a two-sided mid-P value.
 * Special cases: withheld as a whole, with the reason, where fewer than 1.0 are predicted; no lower limit where none is
 * observed (the routine of June 2011 leaves it blank; that the later one does so too is from memory); an observed number
 * that is not whole is an estimate, which has a ratio but neither limits nor a p value. A Problem for negative numbers
 * and impossible levels. Error: that of the limits' method and of {@link midPTest}.
 * Source: the public statistical routines of the CDC; withholding: CDC, questions on analysis.
 */
export function standardizedRatio(input: StandardizedInput, words: RatioWords): StandardizedRatio {
  const { observed, predicted, level } = input;
  refuseUnlessAmount("observed", observed);
  refuseUnlessAmount("predicted", predicted);
  refuseUnlessLevel(level);
  const figures = { observed, predicted, level };
  if (predicted < fewestPredicted) {
    const none = missing(`Fewer than 1.0 ${words.counted} are predicted, so the ${words.name} is withheld.`);
    return { ...figures, ratio: none, lower: none, upper: none, p: none, method: null };
  }
  const ratio = { value: observed / predicted };
  if (!Number.isSafeInteger(observed)) {
    const none = missing(`The ${words.counted} are an estimate, so the ${words.name} has no limits and no test.`);
    return { ...figures, ratio, lower: none, upper: none, p: none, method: null };
  }
  const limits = poissonLimits(input);
  const lower =
    observed === 0
      ? missing(`No ${words.counted} are observed, so the ${words.name} has no lower limit.`)
      : { value: limits.lower / predicted };
  const upper = { value: limits.upper / predicted };
  return { ...figures, ratio, lower, upper, p: { value: midPTest(input) }, method: limits.method };
}

function missing(reason: string): Ratio {
  return { value: null, reason };
}
