import { refuseUnlessAmount, refuseUnlessCount, refuseUnlessPositive } from "./check-figures.ts";

/** One stratum with the SIR that is its goal. */
export interface CadStratum {
  readonly observed: number;
  readonly predicted: number;
  /** The SIR that is aimed at. */
  readonly goal: number;
}

/**
 * The cumulative attributable difference: observed - predicted x goal, added over strata, unrounded. So many infections
 * would have to be prevented to reach the goal; negative where the goal is beaten. No strata give 0. A Problem for
 * figures that cannot be, and for a goal that is not above zero.
 * Source: Soe et al., Infect Control Hosp Epidemiol 2015, appendix.
 */
export function cad(strata: readonly CadStratum[]): number {
  return strata.reduce((sum, { observed, predicted, goal }) => {
    refuseUnlessCount("observed", observed);
    refuseUnlessAmount("predicted", predicted);
    refuseUnlessPositive("goal", goal);
    return sum + (observed - predicted * goal);
  }, 0);
}
