import { refuseUnlessAmount, refuseUnlessCount, refuseUnlessLevel } from "./check-figures.ts";
import { type Comparison, comparePoisson } from "./compare-poisson.ts";

/** Observed and predicted infections. */
export interface ObservedOverPredicted {
  readonly observed: number;
  readonly predicted: number;
}

/**
 * Two SIRs (two wards, or two periods of one) against each other: first / second with mid-P or exact limits and p value.
 * The published routine prints SIR 2 / SIR 1, which is this with the sides exchanged.
 * Special cases: as {@link comparePoisson}; where either side has fewer than 1.0 predicted its SIR is withheld and so is
 * the comparison (common practice). A Problem for figures that cannot be. Many such comparisons find differences by
 * chance. Source: the public statistical routine of the CDC for two SIRs. Error: below 1e-11, relative.
 */
export function compareSirs(input: {
  first: ObservedOverPredicted;
  second: ObservedOverPredicted;
  level: number;
  by: "mid-p" | "exact";
}): Comparison {
  const { first, second, level, by } = input;
  refuseUnlessLevel(level);
  for (const { observed, predicted } of [first, second]) {
    refuseUnlessCount("observed", observed);
    refuseUnlessAmount("predicted", predicted);
  }
  if (first.predicted < 1 || second.predicted < 1) {
    const none = { value: null, reason: "One SIR is withheld: fewer than 1.0 infections are predicted for it." };
    return { ratio: none, lower: none, upper: none, p: none, level };
  }
  const over = ({ observed, predicted }: ObservedOverPredicted) => ({ count: observed, over: predicted });
  return comparePoisson({ first: over(first), second: over(second), level, weight: by === "mid-p" ? 0.5 : 1 });
}
