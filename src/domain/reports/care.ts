import type { Sheet, SheetCell, SheetColumn } from "../../../shared/sheet.ts";
import type { DailyCount } from "../counting/daily-count.ts";
import { type DayNumber, dayText } from "../days/day-number.ts";
import type { MonthNecessity } from "../necessity/month-necessity.ts";
import type { MonthFacts } from "./month-facts.ts";

/** What a report of care knows of one ward. */
export interface WardCare {
  readonly wardId: number;
  readonly code: string;
  readonly name: string;
  readonly catheterDays: number;
  readonly necessity: MonthNecessity;
  /** Days that are over and that nobody counted by hand; null when the ward makes no such counts in this period. */
  readonly manualCountsMissing: number | null;
  /** What was counted by hand on days that are over, in order. */
  readonly manualCounts: readonly ({ readonly day: DayNumber } & DailyCount)[];
  /** Censuses at which a patient was on no unit and no reason is recorded, by the unit that they may belong to. */
  readonly absencesUnknown: number;
}

/** What a report of care may know. */
export interface CareFacts extends Pick<MonthFacts, "facility" | "first" | "last" | "asOf"> {
  readonly wards: readonly WardCare[];
}

/** The figures of a ward, in the order of their columns; null is missing. */
const figures = {
  catheter_days: ["Catheter-days", "catheter-days", ({ catheterDays }) => catheterDays],
  reviews_due: ["Reviews due", "reviews", ({ necessity }) => necessity.reviewsDue.length],
  reviews_in_time: ["Done in time", "reviews", ({ necessity }) => necessity.reviewsInTime.length],
  reviews_late: ["Done late", "reviews", ({ necessity }) => necessity.reviewsLate.length],
  reviews_missed: ["Not done", "reviews", ({ necessity }) => necessity.reviewsMissed.length],
  reviews_overdue: ["Overdue now", "reviews", ({ necessity }) => necessity.reviewsOverdue.length],
  past_threshold: ["Days past threshold", "catheter-days", ({ necessity }) => necessity.daysPastThreshold.length],
  no_indication: [
    "Days with no indication recorded",
    "catheter-days",
    ({ necessity }) => necessity.daysWithoutIndication.length,
  ],
  outside_policy: [
    "Days with an indication outside the policy",
    "catheter-days",
    ({ necessity }) => necessity.daysOutsidePolicy.length,
  ],
  not_confirmed: [
    "Days without a confirmed catheter",
    "catheter-days",
    ({ necessity }) => necessity.daysDoubtful.length,
  ],
  care_checks: ["Care checks", "care checks", ({ necessity }) => necessity.careChecks.length],
  all_items_kept: ["With every item kept", "care checks", ({ necessity }) => necessity.careChecksKept.length],
  counts_missing: ["Manual counts missing", "days", ({ manualCountsMissing }) => manualCountsMissing],
  absences_unknown: ["Patient-days with no unit recorded", "patient-days", ({ absencesUnknown }) => absencesUnknown],
} as const satisfies Record<string, readonly [string, string, (ward: WardCare) => number | null]>;
type Figure = keyof typeof figures;
const names = Object.keys(figures) as Figure[];

const columns: SheetColumn[] = [
  { key: "ward", label: "Unit", kind: "text", unit: null },
  { key: "name", label: "Name", kind: "text", unit: null },
  ...names.map((key): SheetColumn => ({ key, label: figures[key][0], kind: "whole", unit: figures[key][1] })),
  { key: "bundle_compliance", label: "Bundle compliance", kind: "ratio", unit: "care checks with every item kept" },
];

const sources = [
  "Daily review of the need for a catheter, and a bundle of maintenance: HICPAC guideline 2009 and SHEA/IDSA/APIC practice recommendations, 2022 update",
  "Hours, thresholds, indications and items: the policy in force on each unit and day",
];

/** Reviews, indications, confirmations and care checks of each ward over a period. */
export function careSheet(facts: CareFacts): Sheet {
  return {
    id: "care",
    title: `Reviews and care of catheters, ${facts.facility.name}`,
    period: `${dayText(facts.first)} to ${dayText(facts.last)}`,
    asOf: new Date(facts.asOf).toISOString(),
    sources,
    columns,
    rows: facts.wards.map((ward) => [ward.code, ward.name, ...cellsOf(names.map((name) => figures[name][2](ward)))]),
    total:
      facts.wards.length === 0
        ? null
        : ["All units", "", ...cellsOf(names.map((name) => sumOf(facts.wards.map(figures[name][2]))))],
    cautions: [
      "A review counts for the day on which it was made and belongs to the unit of the patient when it was due.",
      "Days are catheter-days at the daily census. A figure of no indication and one of an indication outside the policy are two things.",
      "A maintenance bundle check with an item not checked does not count as one with every item kept.",
    ],
  };
}

/** The figures and the compliance that follows from two of them. */
function cellsOf(values: readonly (number | null)[]): SheetCell[] {
  const [made, kept] = [values[names.indexOf("care_checks")] ?? 0, values[names.indexOf("all_items_kept")] ?? 0];
  return [...values, made === 0 ? null : kept / made];
}

/** The sum of what is known; null when nothing is. */
function sumOf(values: readonly (number | null)[]): number | null {
  const known = values.filter((value) => value !== null);
  return known.length === 0 ? null : known.reduce((sum, value) => sum + value, 0);
}
