import type { Ratio } from "../counting/ratio.ts";
import type { Comparison } from "./compare-poisson.ts";
import { hypergeometricMidP } from "./hypergeometric-test.ts";
import { normalUpperQuantile } from "./normal.ts";
import { type ProportionLimits, withoutLimits } from "./proportion.ts";

/** What a utilization ratio is made of. */
export interface DaysWithCatheter {
  readonly catheterDays: number;
  readonly patientDays: number;
}

/**
 * Two utilization ratios against each other, as proportions: first / second with log (Taylor) limits, and the two-sided
 * mid-P value of the 2 x 2 table. Of the two published tests, whose headers disagree on which is meant for utilization,
 * this is the one for proportions, because a patient-day has a catheter-day or not; {@link compareRates} is the other.
 * Special cases: a side without catheter-days has no limits, one without patient-days, or with estimated days, nothing
 * but the reason. A Problem for figures that cannot be. Catheter-days of one patient follow each other, so the test takes
 * differences for surer than they are: say so beside it. Many such comparisons find differences by chance.
 * Source: the public statistical routine of the CDC for two proportions. Error: below 1e-11, relative.
 */
export function compareUtilization(input: {
  first: DaysWithCatheter;
  second: DaysWithCatheter;
  level: number;
}): Comparison {
  const { level } = input;
  const [first, second] = [input.first, input.second].map(({ catheterDays, patientDays }) => ({
    ...{ part: catheterDays, whole: patientDays, level },
  })) as [Part, Part];
  const none = withoutLimits(first) ?? withoutLimits(second);
  if (none) return { ratio: none.lower, lower: none.lower, upper: none.lower, p: none.lower, level };
  const p = { value: hypergeometricMidP({ first, second }) };
  return { ...ratioWithLimits(first, second, level), p, level };
}

interface Part {
  readonly part: number;
  readonly whole: number;
  readonly level: number;
}

function ratioWithLimits(first: Part, second: Part, level: number): ProportionLimits & { ratio: Ratio } {
  const missing = (reason: string): Ratio => ({ value: null, reason });
  if (second.part === 0) {
    const none = missing("The second side has no catheter-days, so there is no ratio to it.");
    return { ratio: none, lower: none, upper: none };
  }
  const ratio = first.part / first.whole / (second.part / second.whole);
  if (first.part === 0) {
    const none = missing("The first side has no catheter-days, so the ratio has no limits.");
    return { ratio: { value: ratio }, lower: none, upper: none };
  }
  const variance = 1 / first.part - 1 / first.whole + 1 / second.part - 1 / second.whole;
  const factor = Math.exp(normalUpperQuantile((1 - level) / 2) * Math.sqrt(variance));
  return { ratio: { value: ratio }, lower: { value: ratio / factor }, upper: { value: ratio * factor } };
}
