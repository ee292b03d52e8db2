import { refuseUnlessAmount, refuseUnlessCount } from "./check-figures.ts";
import type { LimitChoice } from "./poisson-limits.ts";
import { type StandardizedRatio, standardizedRatio } from "./standardized-ratio.ts";

/** One stratum (a ward, a month): its predicted catheter-days, and the infections predicted for each of them. */
export interface PopulationStratum {
  readonly predictedCatheterDays: number;
  readonly predictedPerCatheterDay: number;
}

/**
 * The population SIR: observed infections / those predicted if the wards used catheters as predicted. It falls when
 * catheter use is cut, which a SIR over the used catheter-days does not. About SIR x SUR, and exactly that where the
 * SUR is the same in every stratum. Withheld as a SIR is.
 * Source: Fakih et al., "The case for a population standardized infection ratio", Infect Control Hosp Epidemiol 2019.
 */
export function populationSir(input: {
  observed: number;
  strata: readonly PopulationStratum[];
  level: number;
  by: LimitChoice;
}): StandardizedRatio {
  const { observed, strata, level, by } = input;
  refuseUnlessCount("observed", observed);
  let predicted = 0;
  for (const { predictedCatheterDays, predictedPerCatheterDay } of strata) {
    refuseUnlessAmount("predictedCatheterDays", predictedCatheterDays);
    refuseUnlessAmount("predictedPerCatheterDay", predictedPerCatheterDay);
    predicted += predictedCatheterDays * predictedPerCatheterDay;
  }
  return standardizedRatio({ observed, predicted, level, by }, { counted: "infections", name: "population SIR" });
}
