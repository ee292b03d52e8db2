import type { CensusTime } from "../../../shared/day.ts";
import type { UncountedCensus } from "../counting/uncounted-censuses.ts";
import type { DayNumber, Instant } from "../days/day-number.ts";
import type { QualityFinding } from "../timeline/data-quality.ts";
import type { Held } from "./line-gaps.ts";
import type { MissingLines } from "./missing-lines.ts";

/** All that a report of days may know. */
export interface MonthFacts {
  readonly facility: { readonly name: string; readonly zone: string };
  readonly first: DayNumber;
  readonly last: DayNumber;
  /** The instant up to which the record was read. */
  readonly asOf: Instant;
  /** Whether the last day's census had been taken by then. */
  readonly complete: boolean;
  /** Whether its last day was over by then, and with it everything that could still be done in time. */
  readonly over: boolean;
  /** Census times in force in the period, each with the first day of the period on which it holds. */
  readonly census: readonly { readonly fromDay: DayNumber; readonly time: CensusTime }[];
  /** Every census of the period, also those that are still to be taken. */
  readonly censuses: readonly { readonly day: DayNumber; readonly at: Instant }[];
  readonly wards: readonly WardFacts[];
  readonly findings: readonly QualityFinding[];
  /** Censuses of stays that may miss a patient-day, with the ward that it may belong to. */
  readonly uncounted: readonly (Pick<UncountedCensus, "kind" | "day"> & { readonly wardId: number | null })[];
  /** How many stays touch the period, and the ward of the last move of each that only its moves tell of. */
  readonly undescribed: { readonly stays: number; readonly wardIds: readonly number[] };
  /** What was sent and is not in the record. */
  readonly held?: Held;
  /** What all wards together miss because of rejected lines. */
  readonly missing?: MissingLines;
}

export interface WardFacts {
  readonly wardId: number;
  readonly code: string;
  readonly name: string;
  /** `unknown`: nobody said on some day what the ward is; `none`: it is not for inpatients on any day. */
  readonly inpatient: "yes" | "partly" | "none" | "unknown";
  /** The ward was named in a file of moves and never described. */
  readonly namedOnly: boolean;
  readonly patientDays: number;
  readonly catheterDays: number;
  /** What its counts miss because of rejected lines. */
  readonly missing?: MissingLines;
  /** By day, in order; only days with a patient. */
  readonly days: readonly { readonly day: DayNumber; readonly patientDays: number; readonly catheterDays: number }[];
}
