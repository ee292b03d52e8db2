import { zoneNamed } from "../../../src/domain/days/zone.ts";
import type { IntakeValues, PatientFile, PatientLine, PlacedReview } from "../../../src/domain/intake/intake-line.ts";
import type { Outcome } from "../../../src/domain/intake/outcome.ts";
import type { CareRules } from "../../../src/domain/intake/plan.ts";
import type { Cultures } from "../../../src/domain/intake/plan-cultures.ts";
import { planPatient } from "../../../src/domain/intake/plan-patient.ts";
import { defaultPolicy } from "../../../src/domain/policy/default-policy.ts";
import type { CatheterNote } from "../../../src/domain/timeline/note.ts";
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
    "reviews.csv": {
      ...{ catheter: null, stay: "S1", day: 0, outcome: "keep", indication: null, note: null, written: null },
    },
    "specimens.csv": {
      ...{ stay: "S1", specimen: null, kind: "urine", collected: 0, method: "culture", status: "final" },
      ...{ organism: null, group: null, count: null },
    },
    "signs.csv": {
      ...{ stay: "S1", day: 0, time: null, sign: "temperature", present: null, value: null, other_cause: null },
      ...{ last_day: null, reviewed: null },
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

/** A line of reviews.csv, of the stay S1, that says only the day when told so. */
export const review = (at: number, values: Partial<IntakeValues["reviews.csv"]>, dayOnly = false): PlacedReview => {
  const said = line("reviews.csv", at, values) as PlacedReview;
  return dayOnly ? { ...said, marks: [{ kind: "time-unknown", column: "day" }] } : said;
};

/** A line of specimens.csv: a final report of a urine culture of the stay S1, without an organism. */
export const specimen = (at: number, values: Partial<IntakeValues["specimens.csv"]>) =>
  line("specimens.csv", at, values);
/** A line of signs.csv, of a temperature of the stay S1 on 1 January 1970. */
export const sign = (at: number, values: Partial<IntakeValues["signs.csv"]>) => line("signs.csv", at, values);

/** Person 7 imports at noon of 11 January 1970, in UTC and under the built-in policy. */
export const care: CareRules = {
  zone: zoneNamed("UTC"),
  wards: new Map(),
  now: hour(10 * 24 + 12),
  personId: 7,
  policyOn: () => ({ body: defaultPolicy }),
};

/** The line with local times in these columns that occurred twice. */
export function repeated<L extends PatientLine>(said: L, ...columns: readonly string[]): L {
  return { ...said, marks: columns.map((column) => ({ kind: "repeated-hour", column })) };
}

/** What lines make of a timeline, and what becomes of each, as text. New entries have the ids from `firstId`. */
export function plan(
  lines: readonly PatientLine[],
  timeline: PatientTimeline = { patientId: 1, stays: [] },
  firstId = 100,
  reviews: readonly CatheterNote[] = [],
  more: { cultures?: Cultures; seen?: readonly PatientLine[] } = {},
) {
  let next = firstId;
  const planned = planPatient({ timeline, patientId: 1, reviews, ...more }, lines, {
    wardIds,
    newId: () => next++,
    care,
  });
  const outcomes = lines.map((l) => summary(planned.outcomes.get(l)));
  return { timeline: planned.timeline, notes: planned.notes, cultures: planned.cultures, outcomes };
}

/** An outcome as text: its state, its marks, or its faults with column and place. */
export function summary(outcome: Outcome | undefined): string {
  if (outcome?.state === "refused")
    return outcome.faults.map((f) => `${f.code} ${f.column}${f.other ? ` see ${f.other}` : ""}`).join("; ");
  return outcome?.state === "marked" ? outcome.marks.join(" ") : (outcome?.state ?? "lost");
}
