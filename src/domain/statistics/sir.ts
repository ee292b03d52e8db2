import { refuseUnlessCount } from "./check-figures.ts";
import { type StandardizedInput, type StandardizedRatio, standardizedRatio } from "./standardized-ratio.ts";

/**
 * The standardized infection ratio: observed / predicted infections, with limits and a two-sided mid-P value against 1.
 * Withheld, with the reason, where fewer than 1.0 are predicted. A Problem for an observed number that is not a count.
 * Special cases, error and source: {@link standardizedRatio}.
 */
export function sir(input: StandardizedInput): StandardizedRatio {
  refuseUnlessCount("observed", input.observed);
  return standardizedRatio(input, { counted: "infections", name: "SIR" });
}
