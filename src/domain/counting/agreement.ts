import type { Month } from "../../../shared/day.ts";
import type { DayNumber } from "../days/day-number.ts";
import { monthDays, monthOf } from "../days/month.ts";
import {
  agreementOfMonth,
  fewestDaysToJudge,
  type MonthAgreement,
  type Quantity,
  tolerancePercent,
} from "./agreement-month.ts";
import { assertDailyCount, type DailyCount } from "./daily-count.ts";
import { monthName } from "./month-name.ts";

const monthsInARow = 3;

/** One ward's two counts of one facility day; null where a count is missing. */
export interface CountedDay {
  readonly day: DayNumber;
  readonly manual: DailyCount | null;
  readonly electronic: DailyCount | null;
}

/** What a ward is told about replacing its manual count by the electronic one. */
export type AgreementVerdict = "accepted" | "not yet" | "too few to judge";

/** The verdict on one quantity of a ward, with its three months in order. */
export interface QuantityAgreement {
  readonly verdict: AgreementVerdict;
  readonly sentence: string;
  readonly months: readonly MonthAgreement[];
}

/** The verdict on a ward's electronic counts. It is accepted only when both quantities are. */
export interface Agreement {
  readonly verdict: AgreementVerdict;
  readonly sentence: string;
  readonly patientDays: QuantityAgreement;
  readonly catheterDays: QuantityAgreement;
}

/**
 * Judges whether one ward's electronic count may replace its manual count: patient-days and catheter-days each within
 * 5% of the manual count in each of the three consecutive calendar months that end with `lastMonth`, summed over the
 * days that have both counts. A month outside starts the three months again. "Not yet" when any month differs or has
 * no day with both counts; otherwise "too few to judge" when any month has under 20 manually counted days. Another
 * electronic system is judged again against the manual count, never against the former system.
 * Throws a plain Error for a repeated day or counts that cannot be.
 * Source: 5% and three months read in Challener et al., Infect Control Hosp Epidemiol 2020; by ward, manual as the
 * reference, a new system judged again: CDC Patient Safety Component Manual, chapter 7, table 2 (from memory); only
 * days with both counts, and the minimum of 20: common practice.
 */
export function agreement(ward: { days: readonly CountedDay[]; lastMonth: Month }): Agreement {
  const byMonth = pairsByMonth(ward.days);
  const months = monthsEndingWith(ward.lastMonth);
  const judge = (quantity: Quantity) =>
    judgeQuantity(
      quantity,
      months.map((month) => agreementOfMonth(totalsOf(month, quantity, byMonth.get(month) ?? []))),
    );
  const patientDays = judge("patient-days");
  const catheterDays = judge("catheter-days");
  return { ...overall([patientDays, catheterDays]), patientDays, catheterDays };
}

interface Pair {
  readonly manual: DailyCount;
  readonly electronic: DailyCount;
}

function pairsByMonth(days: readonly CountedDay[]): Map<Month, Pair[]> {
  const seen = new Set<DayNumber>();
  const byMonth = new Map<Month, Pair[]>();
  for (const { day, manual, electronic } of days) {
    if (seen.has(day)) throw new Error(`day number ${day} of one ward is given twice`);
    seen.add(day);
    if (manual !== null) assertDailyCount(manual);
    if (electronic !== null) assertDailyCount(electronic);
    if (manual === null || electronic === null) continue;
    const month = monthOf(day);
    byMonth.set(month, [...(byMonth.get(month) ?? []), { manual, electronic }]);
  }
  return byMonth;
}

function monthsEndingWith(lastMonth: Month): Month[] {
  const months = [lastMonth];
  for (let month = lastMonth; months.length < monthsInARow; months.unshift(month)) {
    month = monthOf(monthDays(month).first - 1);
  }
  return months;
}

function totalsOf(month: Month, quantity: Quantity, pairs: readonly Pair[]) {
  const part = quantity === "patient-days" ? "patients" : "catheters";
  const { first, last } = monthDays(month);
  return {
    month,
    quantity,
    daysCompared: pairs.length,
    daysInMonth: last - first + 1,
    manual: pairs.reduce((sum, pair) => sum + pair.manual[part], 0),
    electronic: pairs.reduce((sum, pair) => sum + pair.electronic[part], 0),
  };
}

function judgeQuantity(quantity: Quantity, months: readonly MonthAgreement[]): QuantityAgreement {
  const named = (outcome: MonthAgreement["outcome"]) =>
    months.filter((one) => one.outcome === outcome).map((one) => monthName(one.month));
  const [differing, uncounted, small] = [named("differs"), named("no day with both counts"), named("too few to judge")];
  if (differing.length + uncounted.length > 0) {
    const reasons = [
      ...differing.map((name) => `in ${name} the counts differ by more than ${tolerancePercent}%`),
      ...uncounted.map((name) => `${name} has no day with both counts`),
    ];
    const sentence = `Not yet for ${quantity}: ${reasons.join("; ")}. Three months in a row within ${tolerancePercent}% are needed.`;
    return { verdict: "not yet", sentence, months };
  }
  if (small.length > 0) {
    const sentence = `Too few to judge ${quantity}: fewer than ${fewestDaysToJudge} by manual count in ${small.join(", ")}.`;
    return { verdict: "too few to judge", sentence, months };
  }
  const sentence = `Accepted for ${quantity}: within ${tolerancePercent}% of the manual count in three months in a row.`;
  return { verdict: "accepted", sentence, months };
}

function overall(parts: readonly QuantityAgreement[]): { verdict: AgreementVerdict; sentence: string } {
  const open = parts.filter((part) => part.verdict !== "accepted");
  if (open.length === 0) {
    const sentence = "Accepted: the electronic count of this ward may replace the manual count.";
    return { verdict: "accepted", sentence };
  }
  const verdict = open.some((part) => part.verdict === "not yet") ? "not yet" : "too few to judge";
  const reasons = open.map((part) => part.sentence).join(" ");
  return { verdict, sentence: `${reasons} Keep counting this ward by hand.` };
}
