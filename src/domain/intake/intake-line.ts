import type { ReviewOutcome } from "../../../shared/catheter-words.ts";
import type {
  OrganismGroup,
  SignFinding,
  SignName,
  SpecimenKind,
  SpecimenMethod,
  SpecimenStatus,
} from "../../../shared/culture-words.ts";
import type { AbsenceKind, CatheterKind, WardSetting } from "../../../shared/vocabulary.ts";
import type { Temperature } from "../criteria/index.ts";
import type { DayNumber, Instant } from "../days/day-number.ts";

/** What a line of each file says. A value that is not there is null. */
export interface IntakeValues {
  "wards.csv": {
    readonly ward: string;
    readonly name: string | null;
    readonly type: string | null;
    readonly setting: WardSetting | null;
    readonly beds: number | null;
    readonly opened: DayNumber | null;
    readonly closed: DayNumber | null;
  };
  "stays.csv": {
    readonly stay: string;
    readonly patient: string;
    readonly birth_date: DayNumber | null;
    readonly sex: string | null;
    readonly admitted: Instant | null;
    readonly discharged: Instant | null;
    readonly disposition: string | null;
  };
  "moves.csv": {
    readonly stay: string;
    readonly patient: string;
    readonly ward: string;
    readonly bed: string | null;
    readonly from: Instant;
    readonly to: Instant | null;
    readonly absence: AbsenceKind | null;
  };
  "catheters.csv": {
    readonly stay: string;
    readonly catheter: string | null;
    readonly kind: CatheterKind;
    readonly inserted: Instant | null;
    readonly removed: Instant | null;
    readonly last_seen: Instant | null;
    readonly in_place_on_arrival: boolean | null;
    readonly indication: string | null;
    readonly size_fr: number | null;
    readonly balloon_ml: number | null;
  };
  "reviews.csv": {
    readonly catheter: string | null;
    readonly stay: string | null;
    /** Noon, with the mark `time-unknown`, where only the day is known. */
    readonly day: Instant;
    readonly outcome: ReviewOutcome;
    readonly indication: string | null;
    readonly note: string | null;
    readonly written: Instant | null;
  };
  "specimens.csv": {
    readonly stay: string;
    readonly specimen: string | null;
    readonly kind: SpecimenKind;
    readonly collected: Instant;
    readonly method: SpecimenMethod;
    readonly status: SpecimenStatus;
    /** As the laboratory wrote it; null: nothing grew, or nothing is known yet. */
    readonly organism: string | null;
    readonly group: OrganismGroup | null;
    readonly count: string | null;
  };
  "signs.csv": {
    readonly stay: string;
    readonly day: DayNumber;
    /** Local to the facility, such as `09:30`. */
    readonly time: string | null;
    readonly sign: SignName;
    readonly present: SignFinding | null;
    readonly value: Temperature | null;
    readonly other_cause: boolean | null;
    /** Of a chart review (`not-documented`): its last day, and when the chart was read. */
    readonly last_day: DayNumber | null;
    readonly reviewed: Instant | null;
  };
  "daily-counts.csv": {
    readonly ward: string;
    readonly day: DayNumber;
    readonly patients: number;
    readonly catheters: number;
  };
}
export type IntakeFile = keyof IntakeValues;

/** A line of one file. */
export interface LineOf<F extends IntakeFile> {
  readonly file: F;
  /** The physical line in the file, from 1. */
  readonly line: number;
  readonly values: IntakeValues[F];
  /** Columns whose local time occurred twice, or that give a day where a time is wanted. */
  readonly marks: readonly { readonly kind: "repeated-hour" | "time-unknown" | "no-hour"; readonly column: string }[];
  /** The line as it stands in the file. */
  readonly raw: string;
}
export type IntakeLine = { [F in IntakeFile]: LineOf<F> }[IntakeFile];
/** Files about specimens and signs, which belong to a patient and to no stay. */
export type CultureFile = "specimens.csv" | "signs.csv";
export type PatientFile = "stays.csv" | "moves.csv" | "catheters.csv" | "reviews.csv" | CultureFile;
/** A review whose stay is known: from the line itself, or from its catheter. */
export type PlacedReview = LineOf<"reviews.csv"> & { readonly values: { readonly stay: string } };
/** A line about a patient, with the stay that it belongs to. */
export type PatientLine =
  | { [F in Exclude<PatientFile, "reviews.csv">]: LineOf<F> }[Exclude<PatientFile, "reviews.csv">]
  | PlacedReview;

/** Where a line stands, for people: `moves.csv line 12`. */
export function placeOf(line: { readonly file: string; readonly line: number }): string {
  return `${line.file} line ${line.line}`;
}

/** What tells one specimen of a folder from another: its number, or else its kind and time. */
export function specimenKey(
  values: Pick<IntakeValues["specimens.csv"], "stay" | "specimen" | "kind" | "collected">,
): string {
  const { stay, specimen, kind, collected } = values;
  return JSON.stringify(specimen === null ? [stay, kind, collected] : [stay, specimen]);
}
