import type { Month } from "../../../shared/day.ts";
import { notFinalWords } from "../../../shared/figure-words.ts";
import type { Ratio } from "../counting/ratio.ts";
import { utilization } from "../counting/utilization.ts";
import type { Comparison } from "../statistics/compare-poisson.ts";
import { compareRates } from "../statistics/compare-rates.ts";
import { compareSirs } from "../statistics/compare-sirs.ts";
import { compareUtilization } from "../statistics/compare-utilization.ts";
import { type ComparedTotals, level, per, periodText, withoutRate } from "./comparison-facts.ts";

/** One side of a test: a ward over some months. */
export interface Side extends ComparedTotals {
  readonly code: string;
  readonly months: readonly Month[];
  /** What the baseline in use predicts for the watched months. */
  readonly predicted: Ratio;
}

/** A test of two sides; what is missing has its reason in the sentence. */
export interface TestOfTwo {
  readonly what: "rate" | "sir" | "utilization";
  readonly first: number | null;
  readonly second: number | null;
  readonly comparison: Comparison;
  readonly method: string;
  readonly sentence: string;
}

type Names = { readonly what: string; readonly first: string; readonly second: string };

/** Two wards, or two periods of one, tested: rates, SIRs and utilization ratios, each first / second. */
export function compareTwoWards(first: Side, second: Side): TestOfTwo[] {
  const names = namesOf(first, second);
  const rates = rateTest(first, second);
  const sirs = sirTest(first, second);
  const ratios = compareUtilization({ first, second, level });
  const rateOf = (side: Side) =>
    withoutRate(side) === null ? ((side.infections ?? 0) / side.watchedDays) * per : null;
  const sirOf = ({ infections, predicted }: Side) =>
    infections === null || predicted.value === null || predicted.value < 1 ? null : infections / predicted.value;
  const midP = "mid-P limits and two-sided mid-P value of two Poisson counts";
  return [
    {
      ...{ what: "rate", first: rateOf(first), second: rateOf(second), comparison: rates, method: midP },
      sentence: `${inWords(rates, { ...names, what: "CAUTI rate" })}${notFinal(first, second)}`,
    },
    {
      ...{ what: "sir", first: sirOf(first), second: sirOf(second), comparison: sirs, method: midP },
      sentence: `${inWords(sirs, { ...names, what: "SIR" })}${notFinal(first, second)}`,
    },
    {
      ...{ what: "utilization", first: utilization(first).value, second: utilization(second).value },
      comparison: ratios,
      method: "log (Taylor) limits of a ratio of proportions and two-sided mid-P value of the 2 x 2 table",
      sentence: `${inWords(ratios, { ...names, what: "device utilization ratio" })} Catheter-days of one patient follow each other, so this test takes differences for surer than they are.`,
    },
  ];
}

/** Says that cultures could still change one of two counts. */
function notFinal(first: Side, second: Side): string {
  const sides = [first, second].filter(({ open }) => open > 0);
  if (sides.length === 0) return "";
  const each = sides.map((side) => `${side.code} is ${notFinalWords(side.open)}`).join(", ");
  return ` The count of ${each}.`;
}

/** What must be said beside any such test. */
export const cautionsOfTests = [
  "Many comparisons find differences by chance: of twenty tests of units that do not differ, about one has a p value below 0.05. Decide before you look which two you compare, and why.",
  "A difference that is not found is not shown to be absent: with few infections only large differences can be seen.",
  "Units of different types, or with patients of different kinds, differ for reasons that no test of these counts can see.",
];

function namesOf(first: Side, second: Side): { first: string; second: string } {
  const named = ({ code, months }: Side) => `${code} (${periodText(months)})`;
  return { first: named(first), second: named(second) };
}

function none(reason: string): Comparison {
  const missing = { value: null, reason };
  return { ratio: missing, lower: missing, upper: missing, p: missing, level };
}

function rateTest(first: Side, second: Side): Comparison {
  const missing = withoutRate(first) ?? withoutRate(second);
  if (missing !== null) return none(missing);
  const over = ({ infections, watchedDays }: Side) => ({ events: infections ?? 0, days: watchedDays });
  return compareRates({ first: over(first), second: over(second), level, by: "mid-p" });
}

function sirTest(first: Side, second: Side): Comparison {
  const [a, b] = [first.predicted, second.predicted];
  if (first.infections === null || second.infections === null)
    return none("The unit was not under surveillance in this period.");
  if (a.value === null) return none(a.reason);
  if (b.value === null) return none(b.reason);
  return compareSirs({
    first: { observed: first.infections, predicted: a.value },
    second: { observed: second.infections, predicted: b.value },
    level,
    by: "mid-p",
  });
}

function inWords({ ratio, lower, upper, p }: Comparison, { what, first, second }: Names): string {
  if (ratio.value === null) {
    const chance = p.value === null ? "" : ` ${chanceWords(p.value)}`;
    return `The ${what} of ${first} cannot be given as a multiple of that of ${second}. ${ratio.reason}${chance}`;
  }
  const figure = (value: number) => value.toFixed(2);
  const limits =
    lower.value === null || upper.value === null
      ? ""
      : `, and may be ${figure(lower.value)} to ${figure(upper.value)} times it`;
  const chance = p.value === null ? "" : ` ${chanceWords(p.value)}`;
  return `The ${what} of ${first} is ${figure(ratio.value)} times that of ${second}${limits}.${chance}`;
}

function chanceWords(p: number): string {
  const share = p < 0.001 ? "fewer than 1 in 1,000" : `about ${Math.max(1, Math.round(p * 1_000))} in 1,000`;
  return `If nothing but chance were at work, ${share} such comparisons would differ at least as much.`;
}
