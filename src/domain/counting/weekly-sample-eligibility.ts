import type { Weekday } from "../days/day-number.ts";
import { assertAmount } from "./amounts.ts";
import { isWeekend } from "./weekend.ts";

const meanNeededDays = 75;
const monthsNeeded = 12;

/** One condition of weekly sampling, with the reason in words. */
export interface SamplingCondition {
  readonly condition: "enough catheter-days" | "kind of ward" | "fixed weekday";
  readonly outcome: "held" | "failed" | "cannot tell";
  readonly sentence: string;
}

/** Whether a ward may count once a week: the verdict in words and every condition with its reason. */
export interface SamplingVerdict {
  readonly verdict: "may sample" | "must count daily" | "cannot tell";
  readonly sentence: string;
  readonly conditions: readonly SamplingCondition[];
}

/**
 * Judges whether a ward may count catheters on one day a week instead of every day.
 * `pastCatheterDays` holds the ward's catheter-days of the past 12 months, null for a month without a count: a missing
 * month is not zero, so it leaves the verdict open. `weekday` is the one fixed day of the week.
 * Throws a plain Error unless there are 12 months.
 * Sources: a mean of at least 75 device-days a month was read for central lines (Infect Control Hosp Epidemiol 2018)
 * and is from memory for urinary catheters; not in specialty care, oncology or neonatal wards, and never on a Saturday
 * or Sunday: CDC Patient Safety Component Manual, chapter 7, table 2 (both from memory).
 */
export function weeklySampleEligibility(ward: {
  pastCatheterDays: readonly (number | null)[];
  specialtyCareOrOncology: boolean;
  neonatal: boolean;
  weekday: Weekday;
}): SamplingVerdict {
  const conditions = [enoughCatheterDays(ward.pastCatheterDays), kindOfWard(ward), fixedWeekday(ward.weekday)];
  if (conditions.some((one) => one.outcome === "failed")) {
    return { verdict: "must count daily", sentence: "This ward must count its catheters every day.", conditions };
  }
  if (conditions.some((one) => one.outcome === "cannot tell")) {
    const sentence = "It cannot be told yet whether this ward may count once a week; until then it counts every day.";
    return { verdict: "cannot tell", sentence, conditions };
  }
  return { verdict: "may sample", sentence: "This ward may count its catheters once a week.", conditions };
}

function enoughCatheterDays(months: readonly (number | null)[]): SamplingCondition {
  if (months.length !== monthsNeeded) throw new Error(`${monthsNeeded} past months are needed, not ${months.length}`);
  const known = months.filter((days) => days !== null);
  for (const days of known) assertAmount("catheter-days of a past month", days);
  const condition = "enough catheter-days";
  if (known.length < monthsNeeded) {
    const sentence = `Only ${known.length} of the past ${monthsNeeded} months have a count of catheter-days; all are needed for the mean.`;
    return { condition, outcome: "cannot tell", sentence };
  }
  const sum = known.reduce((total, days) => total + days, 0);
  // Cut, not rounded: a mean just under the limit must not print as the limit.
  const printed = (Math.floor((sum / monthsNeeded) * 10 + 1e-9) / 10).toFixed(1);
  return {
    condition,
    outcome: sum >= meanNeededDays * monthsNeeded ? "held" : "failed",
    sentence: `The mean of the past ${monthsNeeded} months is ${printed} catheter-days a month; at least ${meanNeededDays} are needed.`,
  };
}

function kindOfWard(ward: { specialtyCareOrOncology: boolean; neonatal: boolean }): SamplingCondition {
  const condition = "kind of ward";
  if (ward.specialtyCareOrOncology) {
    const sentence = "Specialty care and oncology wards may not sample.";
    return { condition, outcome: "failed", sentence };
  }
  if (ward.neonatal) return { condition, outcome: "failed", sentence: "Neonatal wards may not sample." };
  return { condition, outcome: "held", sentence: "The ward is neither specialty care, oncology nor neonatal." };
}

function fixedWeekday(weekday: Weekday): SamplingCondition {
  const condition = "fixed weekday";
  if (isWeekend(weekday)) {
    const sentence = "The weekly count may not be on a Saturday or Sunday; choose one day from Monday to Friday.";
    return { condition, outcome: "failed", sentence };
  }
  const sentence =
    "The weekly count is on one fixed day from Monday to Friday; a missed day moves to the next available.";
  return { condition, outcome: "held", sentence };
}
