import type { SurvivalStep } from "./kaplan-meier.ts";

/**
 * The restricted mean of a survival time: the area under the curve up to the last time that was watched. Nothing is said
 * about later. No steps give 0.
 * Source: R package survival 3.5-3, rmean. Error: below 1e-12, relative.
 */
export function restrictedMean(steps: readonly SurvivalStep[]): number {
  let [area, from, survival] = [0, 0, 1];
  for (const step of steps) {
    area += (step.time - from) * survival;
    from = step.time;
    survival = step.survival;
  }
  return area;
}
