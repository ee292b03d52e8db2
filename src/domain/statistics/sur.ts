import { type StandardizedInput, type StandardizedRatio, standardizedRatio } from "./standardized-ratio.ts";

/**
 * The standardized utilization ratio: observed / predicted catheter-days, with limits and a two-sided mid-P value
 * against 1. Withheld, with the reason, where less than 1.0 catheter-day is predicted (from memory). Catheter-days
 * that were estimated by sampling have a ratio without limits.
 * Special cases, error and source: {@link standardizedRatio}.
 */
export function sur(input: StandardizedInput): StandardizedRatio {
  return standardizedRatio(input, { counted: "catheter-days", name: "SUR" });
}
