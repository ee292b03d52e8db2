import { refuseUnlessPositive } from "./check-figures.ts";
import { sir } from "./sir.ts";
import type { StandardizedInput, StandardizedRatio } from "./standardized-ratio.ts";

/**
 * A SIR against a target SIR other than 1: the predicted number is multiplied by the target, and the ratio, limits and
 * p value are those of observed / (predicted x target) against 1. Withheld, with the reason, where that product is
 * below 1.0. A Problem for a target that is not above zero.
 * Source: the public statistical routine of the CDC for a SIR against a nominal value (2 observed, 2.04 predicted,
 * target 0.80: predicted becomes 1.632).
 */
export function sirAgainstTarget({ target, ...input }: StandardizedInput & { target: number }): StandardizedRatio {
  refuseUnlessPositive("target", target);
  return sir({ ...input, predicted: input.predicted * target });
}
