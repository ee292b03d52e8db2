import type { Instant } from "../domain/days/day-number.ts";
import type { IntakeFile, IntakeLine, IntakeValues, LineOf } from "../domain/intake/intake-line.ts";
import type { ReadLine } from "../usecases/imports/intake-item.ts";
import type { Course, DemoCatheter } from "./course.ts";
import { type DemoHospital, type DemoOptions, drawHospital } from "./hospital.ts";
import type { Leg } from "./patient-path.ts";
import { type DemoWard, demoWards } from "./wards.ts";

export type { DemoOptions } from "./hospital.ts";

/**
 * The fictional Alder Bay Hospital as lines of files: wards, then for every patient the stay, its moves, its catheters
 * and their reviews, and what was counted by hand. The same seed and instant give the same lines. Nobody in it exists.
 */
export async function* alderBayLines(options: DemoOptions): AsyncIterable<ReadLine> {
  yield* hospitalLines(drawHospital(options), { now: options.now, recordedFrom: Number.POSITIVE_INFINITY });
}

/**
 * The lines of a drawn hospital. Catheters put in and removals made from `recordedFrom` on are left out, for somebody
 * to record them; reviews of such catheters are too.
 */
export function* hospitalLines(
  { courses, counts }: DemoHospital,
  { now, recordedFrom }: { now: Instant; recordedFrom: Instant },
): Iterable<ReadLine> {
  const write = lineWriter();
  for (const ward of demoWards) yield write("wards.csv", wardValues(ward));
  for (const course of courses) yield write("stays.csv", stayValues(course, now));
  for (const course of courses) for (const leg of course.legs) yield write("moves.csv", moveValues(course, leg, now));
  const told = courses.flatMap((course) =>
    course.catheters.flatMap((catheter) => (isImported(catheter, recordedFrom) ? [{ course, catheter }] : [])),
  );
  for (const { course, catheter } of told) yield write("catheters.csv", catheterValues(course, catheter, recordedFrom));
  yield* reviewLines(
    told.map(({ catheter }) => catheter),
    write,
  );
  for (const count of counts) yield write("daily-counts.csv", count);
}

/** The lines of the reviews of these catheters. */
export function* reviewLines(catheters: readonly DemoCatheter[], write = lineWriter()): Iterable<ReadLine> {
  for (const { number, reviews } of catheters)
    for (const { at: day, outcome, indication, note, written } of reviews)
      yield write("reviews.csv", { catheter: number, stay: null, day, outcome, indication, note, written });
}

/** Whether a catheter comes with the files; one found in place on arrival always does. */
export function isImported({ inserted }: DemoCatheter, recordedFrom: Instant): boolean {
  return inserted === null || inserted < recordedFrom;
}

function catheterValues(
  { stay }: Course,
  catheter: DemoCatheter,
  recordedFrom: Instant,
): IntakeValues["catheters.csv"] {
  const { number, kind, inserted, removed, indication, sizeFr } = catheter;
  return {
    ...{ stay, catheter: number, kind, inserted, indication, last_seen: null },
    removed: removed !== null && removed < recordedFrom ? removed : null,
    in_place_on_arrival: inserted === null ? true : null,
    size_fr: sizeFr,
    balloon_ml: 10,
  };
}

function wardValues({ code, name, type, setting, beds }: DemoWard): IntakeValues["wards.csv"] {
  return { ward: code, name, type, setting, beds, opened: null, closed: null };
}

function stayValues(
  { stay, patient, bornOn = null, sex = null, legs }: Course,
  now: Instant,
): IntakeValues["stays.csv"] {
  const [admitted = null, left = now] = [legs.at(0)?.from, legs.at(-1)?.to];
  const discharged = left > now ? null : left;
  return { stay, patient, birth_date: bornOn, sex, admitted, discharged, disposition: null };
}

function moveValues({ stay, patient }: Course, leg: Leg, now: Instant): IntakeValues["moves.csv"] {
  const { ward, bed, from, to, absence } = leg;
  return { stay, patient, ward: ward.code, bed, from, to: to > now ? null : to, absence: to > now ? null : absence };
}

/** Numbers the lines of each file as if they were written down one below the other. */
function lineWriter(): <F extends IntakeFile>(file: F, values: IntakeValues[F]) => ReadLine {
  const last = new Map<IntakeFile, number>();
  return <F extends IntakeFile>(file: F, values: IntakeValues[F]): ReadLine => {
    const line = (last.get(file) ?? 1) + 1;
    last.set(file, line);
    const raw = Object.values(values).join(",");
    const read: LineOf<F> = { file, line, values, marks: [], raw };
    return { ...(read as unknown as IntakeLine), type: "line", fingerprint: `demo ${file} ${raw}` };
  };
}
