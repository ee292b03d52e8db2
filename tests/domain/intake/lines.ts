import type { IntakeValues, PatientFile, PatientLine } from "../../../src/domain/intake/intake-line.ts";
import type { Outcome } from "../../../src/domain/intake/outcome.ts";
import { planPatient } from "../../../src/domain/intake/plan-patient.ts";
import type { PatientTimeline } from "../../../src/domain/timeline/timeline.ts";

/** The instant of that hour of 1 January 1970. */
export const hour = (n: number) => n * 3_600_000;
/** Wards A and B. */
const wardIds = new Map([
  ["A", 1],
  ["B", 2],
]);

/** A line of a file; what is not said is null. */
function line<F extends PatientFile>(file: F, at: number, values: Partial<IntakeValues[F]>): PatientLine {
  const empty = {
    "stays.csv": {
      stay: "S1",
      patient: "P1",
      birth_date: null,
      sex: null,
      admitted: null,
      discharged: null,
      disposition: null,
    },
    "moves.csv": { stay: "S1", patient: "P1", ward: "A", bed: null, from: 0, to: null, absence: null },
    "catheters.csv": {
      ...{ stay: "S1", catheter: null, kind: "indwelling-urethral", inserted: null, removed: null, last_seen: null },
      ...{ in_place_on_arrival: null, indication: null, size_fr: null, balloon_ml: null },
    },
  }[file];
  return { file, line: at, values: { ...empty, ...values }, marks: [], raw: "" } as unknown as PatientLine;
}

/** A line of moves.csv at that place, of the stay S1 of P1 on ward A unless told otherwise. */
export const move = (at: number, values: Partial<IntakeValues["moves.csv"]>) => line("moves.csv", at, values);
/** A line of stays.csv, of the stay S1 of P1. */
export const stay = (at: number, values: Partial<IntakeValues["stays.csv"]>) => line("stays.csv", at, values);
/** A line of catheters.csv, of the stay S1. */
export const catheter = (at: number, values: Partial<IntakeValues["catheters.csv"]>) =>
  line("catheters.csv", at, values);

/** The line with local times in these columns that occurred twice. */
export function repeated<L extends PatientLine>(said: L, ...columns: readonly string[]): L {
  return { ...said, marks: columns.map((column) => ({ kind: "repeated-hour", column })) };
}

/** What lines make of a timeline, and what becomes of each, as text. New entries have the ids from `firstId`. */
export function plan(
  lines: readonly PatientLine[],
  timeline: PatientTimeline = { patientId: 1, stays: [] },
  firstId = 100,
) {
  let next = firstId;
  const planned = planPatient({ timeline, patientId: 1 }, lines, { wardIds, newId: () => next++ });
  const outcomes = lines.map((l) => summary(planned.outcomes.get(l)));
  return { timeline: planned.timeline, outcomes };
}

/** An outcome as text: its state, its marks, or its faults with column and place. */
export function summary(outcome: Outcome | undefined): string {
  if (outcome?.state === "refused")
    return outcome.faults.map((f) => `${f.code} ${f.column}${f.other ? ` see ${f.other}` : ""}`).join("; ");
  return outcome?.state === "marked" ? outcome.marks.join(" ") : (outcome?.state ?? "lost");
}
