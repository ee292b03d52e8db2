import type { PolicyBody } from "../../../shared/policy.ts";
import { type Fault, Problem, refuse } from "../../../shared/problems.ts";
import type { RecordedSign } from "../cultures/sign.ts";
import type { RecordedSpecimen } from "../cultures/specimen.ts";
import type { ReadingOfRecord } from "../cultures/surveillance-of.ts";
import type { DayNumber, Instant } from "../days/day-number.ts";
import type { CatheterNote } from "../timeline/note.ts";
import type { Mark, PatientTimeline } from "../timeline/timeline.ts";
import { type IntakeLine, type PatientLine, placeOf } from "./intake-line.ts";
import type { LineFault, LineMark, Outcome } from "./outcome.ts";
import { saidInCell } from "./said-in-cell.ts";

/** What notes, specimens and signs are judged by, and who writes them down when. */
export interface CareRules extends ReadingOfRecord {
  readonly now: Instant;
  readonly personId: number;
  /** The policy in force on a ward (null: on none) on a day. */
  readonly policyOn: (wardId: number | null, day: DayNumber) => { readonly body: PolicyBody };
}

/** A note that a line made, or changed. */
export interface NoteChange {
  readonly old: CatheterNote | null;
  readonly now: CatheterNote;
}

/** The state of a patient while lines are applied one after another. */
export interface Plan {
  timeline: PatientTimeline;
  readonly care: CareRules;
  /** The reviews that were recorded before, and what the lines make of them. */
  readonly reviews: Map<number, CatheterNote>;
  readonly notes: NoteChange[];
  /** The patient's specimens and signs as the lines make them. */
  readonly cultures: {
    readonly specimens: Map<number, RecordedSpecimen>;
    readonly signs: Map<number, RecordedSign>;
  };
  /** The record that new stays are made for; the timeline may belong to a survivor. */
  readonly patientId: number;
  readonly wardIds: ReadonlyMap<string, number>;
  readonly newId: () => number;
  readonly outcomes: Map<PatientLine, Outcome>;
  /** Which line made an entry, such as `ward stay 12`, so that a fault can name the line. */
  readonly madeBy: Map<string, string>;
}

/** Columns by the fields that they fill; of two fields of a column the last one carries its marks. */
const columnOfField: Readonly<Record<string, string>> = {
  "/stay": "stay",
  "/insertedAt": "inserted",
  "/removedAfterAt": "removed",
  "/removedBeforeAt": "removed",
  "/removedAt": "removed",
  "/lastSeenAt": "last_seen",
  "/startAt": "from",
  "/endAt": "to",
  "/admittedAt": "admitted",
  "/dischargedAt": "discharged",
  "/catheter": "catheter",
  "/day": "day",
  "/at": "day",
  "/indication": "indication",
  "/writtenAt": "written",
  "/specimen": "specimen",
  "/collectedAt": "collected",
  "/status": "status",
  "/organisms": "organism",
  "/organisms/group": "group",
  "/organisms/count": "count",
  "/time": "time",
  "/finding": "present",
  "/temperature": "value",
  "/otherCause": "other_cause",
  "/lastDay": "last_day",
  "/readAt": "reviewed",
};
/** The same fields seen from the line of a stay, whose ends they meet. */
const columnOfStay: Readonly<Record<string, string>> = { "/startAt": "admitted", "/endAt": "discharged" };

const fieldOfColumn: Readonly<Record<string, string>> = Object.fromEntries(
  Object.entries(columnOfField).map(([pointer, column]) => [column, pointer.slice(1)]),
);

/** The marks that a line leaves on its entry, by the fields of the entry. */
export function entryMarks({ marks }: PatientLine): Mark[] {
  return marks.map(({ kind, column }): Mark => `${kind}:${fieldOfColumn[column] ?? column}`);
}

/** Applies one line: the step's new timeline is kept, or the line is refused and nothing changed. */
export function applyLine(
  plan: Plan,
  line: PatientLine,
  step: () => { timeline: PatientTimeline; marks?: readonly LineMark[] } | "unchanged",
): void {
  try {
    const result = step();
    if (result === "unchanged") {
      plan.outcomes.set(line, { state: "unchanged" });
      return;
    }
    plan.timeline = result.timeline;
    const marks = [...(result.marks ?? []), ...line.marks.map((mark) => mark.kind)];
    plan.outcomes.set(line, marks.length === 0 ? { state: "accepted" } : { state: "marked", marks });
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    refuseLine(
      plan,
      line,
      error.faults.map((fault) => lineFault(plan, line, fault)),
    );
  }
}

/** Refuses a line with its faults. */
export function refuseLine(plan: Plan, line: PatientLine, faults: readonly LineFault[]): void {
  plan.outcomes.set(line, { state: "refused", faults });
}

/** Remembers that a line made an entry, or said of it what is recorded already. */
export function made(plan: Plan, entry: string, line: IntakeLine): void {
  plan.madeBy.set(entry, placeOf(line));
}

/** What a line makes of the timeline. */
export interface StepResult {
  readonly timeline: PatientTimeline;
  readonly marks: readonly LineMark[];
}

/** A line that changes nothing; it is still marked when it gives no end and the record has one. */
export type SameAsRecorded = "unchanged" | (StepResult & { readonly marks: readonly ["end-kept"] });

/** The answer for a line that says what is recorded already. */
export function sameAsRecorded(
  plan: Plan,
  { entry, line, endKept }: { entry: string; line: IntakeLine; endKept: boolean },
): SameAsRecorded {
  made(plan, entry, line);
  return endKept ? { timeline: plan.timeline, marks: ["end-kept"] } : "unchanged";
}

/** Refuses `line-contradicts` for an entry of which another line of the same import spoke. */
export function notMadeHere(plan: Plan, entry: string, pointer = ""): void {
  if (plan.madeBy.has(entry))
    refuse("line-contradicts", "Another line says something else about the same thing.", { other: entry, pointer });
}

function lineFault(plan: Plan, line: PatientLine, fault: Fault): LineFault {
  // A line has one organism, whatever place it has in its specimen.
  const pointer = fault.pointer.replace(/^(\/organisms)\/\d+/, "$1");
  const meant = (line.file === "stays.csv" ? columnOfStay[pointer] : undefined) ?? columnOfField[pointer] ?? null;
  const column = meant !== null && meant in line.values ? meant : firstTimeColumn(line);
  const other = fault.other === undefined ? undefined : nameOf(plan, fault.other);
  return {
    code: fault.code,
    column,
    detail: `${fault.detail}${saidInCell(line, column, plan.care.zone)}`,
    ...(other === undefined ? {} : { other }),
  };
}

/** The line that made an entry, or the entry itself when it is recorded; one that came to nothing has no name. */
function nameOf({ madeBy, timeline, reviews, cultures }: Plan, entry: string): string | undefined {
  const entries = timeline.stays.flatMap((stay) => [
    `stay ${stay.id}`,
    ...stay.wardStays.map((wardStay) => `ward stay ${wardStay.id}`),
    ...stay.catheters.map((catheter) => `catheter ${catheter.id}`),
  ]);
  const recorded = [
    ...entries,
    ...[...reviews.keys()].map((id) => `note ${id}`),
    ...[...cultures.specimens.keys()].map((id) => `specimen ${id}`),
    ...[...cultures.signs.keys()].map((id) => `sign ${id}`),
  ];
  return madeBy.get(entry) ?? (recorded.includes(entry) ? entry : undefined);
}

function firstTimeColumn(line: PatientLine): string {
  return {
    "stays.csv": "admitted",
    "moves.csv": "from",
    "catheters.csv": "inserted",
    "reviews.csv": "day",
    "specimens.csv": "collected",
    "signs.csv": "day",
  }[line.file];
}
