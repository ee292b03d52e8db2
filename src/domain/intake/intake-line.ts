import type { AbsenceKind, CatheterKind, WardSetting } from "../../../shared/vocabulary.ts";
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
  /** Columns whose local time occurred twice. */
  readonly marks: readonly { readonly kind: "repeated-hour"; readonly column: string }[];
  /** The line as it stands in the file. */
  readonly raw: string;
}
export type IntakeLine = { [F in IntakeFile]: LineOf<F> }[IntakeFile];
export type PatientFile = "stays.csv" | "moves.csv" | "catheters.csv";
export type PatientLine = { [F in PatientFile]: LineOf<F> }[PatientFile];

/** Where a line stands, for people: `moves.csv line 12`. */
export function placeOf(line: { readonly file: string; readonly line: number }): string {
  return `${line.file} line ${line.line}`;
}
