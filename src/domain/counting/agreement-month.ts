import type { Month } from "../../../shared/day.ts";
import { assertCount } from "./amounts.ts";
import { monthName } from "./month-name.ts";

/** An electronic count agrees when it is within this part of the manual count, in percent. */
export const tolerancePercent = 5;

/**
 * The fewest manually counted days of a month that can be judged. Under 20 days, 5% is less than one whole day, so one
 * patient counted a minute earlier would decide; the published rule names no minimum (common practice).
 */
export const fewestDaysToJudge = 20;

/** The two totals of a ward that are compared, each by itself. */
export type Quantity = "patient-days" | "catheter-days";

/** One month's two totals of one quantity, summed over the days that have both counts. */
export interface MonthTotals {
  readonly month: Month;
  readonly quantity: Quantity;
  readonly daysCompared: number;
  readonly daysInMonth: number;
  readonly manual: number;
  readonly electronic: number;
}

/** How the two totals compare, with the outcome and a sentence to print. */
export interface MonthAgreement extends MonthTotals {
  /** Electronic less manual, in percent of manual; null when manual is 0. */
  readonly differencePercent: number | null;
  /** The electronic totals that agree, in days, both limits included. */
  readonly tolerance: { readonly low: number; readonly high: number };
  readonly outcome: "agrees" | "differs" | "too few to judge" | "no day with both counts";
  readonly sentence: string;
}

/**
 * Compares an electronic with a manual total of one month; manual is the reference and exactly 5% still agrees.
 * Throws a plain Error for totals that are not whole numbers of zero or more.
 * Source: 5% read in Challener et al., Infect Control Hosp Epidemiol 2020; manual as the reference: CDC Patient Safety
 * Component Manual, chapter 7, table 2 (from memory).
 */
export function agreementOfMonth(totals: MonthTotals): MonthAgreement {
  assertCount("manual", totals.manual);
  assertCount("electronic", totals.electronic);
  const { manual, electronic } = totals;
  const differencePercent = manual === 0 ? null : ((electronic - manual) / manual) * 100;
  const tolerance = {
    low: (manual * (100 - tolerancePercent)) / 100,
    high: (manual * (100 + tolerancePercent)) / 100,
  };
  const outcome = outcomeOf(totals);
  return { ...totals, differencePercent, tolerance, outcome, sentence: sentenceOf(totals, outcome) };
}

function outcomeOf(totals: MonthTotals): MonthAgreement["outcome"] {
  if (totals.daysCompared === 0) return "no day with both counts";
  if (totals.manual < fewestDaysToJudge) return "too few to judge";
  // Whole numbers only, so that exactly 5% is decided exactly.
  const within = Math.abs(totals.electronic - totals.manual) * 100 <= totals.manual * tolerancePercent;
  return within ? "agrees" : "differs";
}

const days = new Intl.NumberFormat("en-US", { maximumFractionDigits: 2 });

function sentenceOf(totals: MonthTotals, outcome: MonthAgreement["outcome"]): string {
  const head = `${monthName(totals.month)}, ${totals.quantity}:`;
  if (outcome === "no day with both counts") return `${head} no day has both a manual and an electronic count.`;
  const counts =
    `${head} ${days.format(totals.manual)} by manual count, ${days.format(totals.electronic)} electronic, ` +
    `on ${totals.daysCompared} of ${totals.daysInMonth} days with both counts.`;
  if (outcome === "too few to judge") {
    return `${counts} At least ${fewestDaysToJudge} by manual count are needed to judge.`;
  }
  const allowed = `${tolerancePercent}% (${days.format((totals.manual * tolerancePercent) / 100)} days)`;
  const verdict = outcome === "agrees" ? "within" : "outside";
  return `${counts} The electronic count is ${differenceInWords(totals, outcome)}; ${verdict} the ${allowed} allowed.`;
}

function differenceInWords(totals: MonthTotals, outcome: MonthAgreement["outcome"]): string {
  const difference = Math.abs(totals.electronic - totals.manual);
  if (difference === 0) return "the same";
  const rounded = ((difference / totals.manual) * 100).toFixed(1);
  // A month outside the limit must not read as standing on it.
  const onLimit = outcome === "differs" && rounded === tolerancePercent.toFixed(1);
  const percent = onLimit ? `just over ${tolerancePercent}%` : `${rounded}%`;
  const direction = totals.electronic > totals.manual ? "higher" : "lower";
  return `${percent} ${direction} (${days.format(difference)} ${difference === 1 ? "day" : "days"})`;
}
