import type { InsertionRecord } from "../../../shared/records.ts";
import type { Baseline } from "../baselines/baseline.ts";
import type { Ratio } from "../counting/ratio.ts";
import type { Dwell } from "../statistics/dwell-curve.ts";
import type { LimitRule } from "../statistics/poisson-limits.ts";
import type { CareFacts } from "./care.ts";
import type { OpenCulture } from "./infections.ts";
import type { MonthFacts } from "./month-facts.ts";

/** What is known of the catheters of a ward over a period. */
export interface WardCatheters {
  /** Those inserted in the period whose insertion belongs to the ward. */
  readonly inserted: readonly Pick<InsertionRecord, "insertedIn" | "insertedBy">[];
  /** The time in place of patients whose catheter was inserted in the period, watched to its end. */
  readonly dwells: readonly Dwell[];
  /** In place at the instant of reading; null for a month that is over. */
  readonly open: number | null;
}

/** What a ward is in a period, beyond its counts. */
export interface WardInMonth {
  readonly wardId: number;
  readonly type: string | null;
  /** The definitions by which its infections are determined; null: it is not watched. */
  readonly edition: string | null;
  /** Open points that the facility reads otherwise than the edition in this period, in words. */
  readonly nonDefault: readonly string[];
  /** The infections attributed to the ward, or why there is no number. */
  readonly infections: Ratio;
  /** Urine cultures beside the count: not confirmed, not determined or not reported. */
  readonly openCultures: readonly OpenCulture[];
  readonly catheters: WardCatheters;
  /** What a model asks for. */
  readonly factors: Readonly<Record<string, string | number>>;
}

/** A baseline with the number under which it is kept. */
export interface NumberedBaseline {
  readonly baselineId: number;
  readonly baseline: Baseline;
}

/** With what a month is compared. */
export interface MonthComparison {
  readonly infections: NumberedBaseline | null;
  readonly catheterDays: NumberedBaseline | null;
  /** The SIR that is aimed at; null: none was set. */
  readonly goal: number | null;
  readonly limits: LimitRule;
}

/** All that the report of a month's figures may know. */
export interface FigureFacts {
  readonly days: MonthFacts;
  readonly care: CareFacts;
  readonly wards: readonly WardInMonth[];
  readonly comparison: MonthComparison;
}
