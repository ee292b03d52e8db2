import type { ProblemCode } from "../../../shared/problems.ts";

/** What is doubtful about a line that was stored. */
export const lineMarks = {
  "in-place-on-arrival": "the catheter was in place on arrival",
  "removed-after-discharge": "the removal is after the discharge; the catheter counts up to the discharge",
  "off-the-wards": "wholly inside a time off the units, so it is not counted",
  "end-kept": "the record has an end and the line gives none; the recorded one was kept",
  "ward-alias": "describes a unit by its alias; the unit keeps its own description",
  "absence-unknown": "time off the units of an unknown kind follows",
  "absence-known": "time off the units follows",
  "ward-by-hand": "this unit is described by hand; the line changed nothing of it",
  "repeated-hour": "the local time occurred twice; the earlier one was taken",
  "time-unknown": "only the day is known; noon was taken, or the time nearest to it at which the catheter was in place",
  "no-hour": "a time of 00:00 was taken for a day without a known hour, as the settings of the source say",
  "organism-unknown":
    "the name is not on the list of organisms and has no group; it decides nothing until a group is chosen",
  "count-unreadable": "the count cannot be read; it decides nothing until it is entered in another form",
  "report-older": "the record has a later report of this specimen; the line changed nothing of it",
  "unusual-value": "the value is outside the usual",
} as const;
export type LineMark = keyof typeof lineMarks;

/** The column that a mark is about, where the mark alone tells it; of a time it may be any of several. */
const columnOfMark: Readonly<Partial<Record<LineMark, string | Readonly<Partial<Record<string, string>>>>>> = {
  "in-place-on-arrival": "inserted",
  "end-kept": { "stays.csv": "discharged", "moves.csv": "to", "catheters.csv": "removed" },
  "removed-after-discharge": "removed",
  "off-the-wards": "inserted",
  "absence-unknown": "absence",
  "absence-known": "absence",
  "ward-by-hand": "ward",
  "repeated-hour": { "signs.csv": "time", "specimens.csv": "collected", "reviews.csv": "day" },
  "time-unknown": { "reviews.csv": "day" },
  "no-hour": { "signs.csv": "time", "specimens.csv": "collected" },
  "organism-unknown": "organism",
  "count-unreadable": "count",
  "report-older": "status",
  "unusual-value": "value",
};

/** The column of a file that a mark is about; null where that is not known. */
export function markColumn(file: string, mark: LineMark): string | null {
  const column = columnOfMark[mark];
  return (typeof column === "object" ? column[file] : column) ?? null;
}

/** One thing wrong with a line, with its column where one is meant. */
export interface LineFault {
  readonly code: ProblemCode;
  readonly column: string | null;
  readonly detail: string;
  /** The line or stored entry that stands in the way. */
  readonly other?: string;
}

/** What becomes of a line. */
export type Outcome =
  | { readonly state: "accepted" }
  | { readonly state: "marked"; readonly marks: readonly LineMark[] }
  | { readonly state: "unchanged" }
  | { readonly state: "refused"; readonly faults: readonly LineFault[] };
