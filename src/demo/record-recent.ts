import type { Instant } from "../domain/days/day-number.ts";
import type { Act } from "../usecases/act.ts";
import { changeCatheter } from "../usecases/record/change-catheter.ts";
import { correctNote } from "../usecases/record/correct-note.ts";
import { insertCatheter } from "../usecases/record/insert-catheter.ts";
import { readCatheter } from "../usecases/record/read-catheter.ts";
import { recordInsertion } from "../usecases/record/record-insertion.ts";
import { recordRemoval } from "../usecases/record/record-removal.ts";
import { writeNotes } from "../usecases/record/write-notes.ts";
import { isImported } from "./alder-bay.ts";
import { type Course, type DemoCatheter, legAt } from "./course.ts";
import type { Draw } from "./draw.ts";
import type { DemoHospital } from "./hospital.ts";
import type { CareRound } from "./recent-care.ts";
import { drawInsertionRecord } from "./recent-care.ts";

const minuteMs = 60_000;

/** By whom, when and under which numbers things are recorded. */
export interface Recorder {
  readonly wardIds: ReadonlyMap<string, number>;
  readonly stayIds: ReadonlyMap<string, number>;
  /** By the number of a stay. */
  readonly patientIds: ReadonlyMap<string, number>;
  readonly catheterIds: Map<string, number>;
  /** Somebody of that ward at that time, or now when it has not come. */
  act(ward: string | undefined, at: Instant): Act;
}

/** Records the catheters put in from an instant on. Those of which nobody says why have no record of the insertion. */
export async function recordInsertions(
  recorder: Recorder,
  draw: Draw,
  { courses }: DemoHospital,
  from: Instant,
): Promise<void> {
  for (const { course, catheter } of inOrder(courses, ({ start }) => start)) {
    if (isImported(catheter, from)) continue;
    const ward = wardOfCatheter(course, catheter.start);
    const act = recorder.act(ward.code, catheter.start + draw.whole(5, 40) * minuteMs);
    const { kind, number, indication, sizeFr, start: insertedAt } = catheter;
    const said = { stayId: known(recorder.stayIds, course.stay), kind, number, insertedAt, sizeFr, balloonMl: 10 };
    const record = drawInsertionRecord(draw, ward);
    const { catheterId } = await (indication === null
      ? insertCatheter(act, { ...said, inPlaceOnArrival: false })
      : recordInsertion(act, { ...said, indication, record }));
    recorder.catheterIds.set(number, catheterId);
  }
}

/** Records the removals made from an instant on. */
export async function recordRemovals(recorder: Recorder, { courses }: DemoHospital, from: Instant): Promise<void> {
  for (const { course, catheter } of inOrder(courses, ({ gone }) => gone)) {
    const { removed, reason, number } = catheter;
    if (removed === null || removed < from) continue;
    const act = recorder.act(wardOfCatheter(course, removed).code, removed + 10 * minuteMs);
    const record = { balloonWithdrawnMl: 10, catheterIntact: true, ...(reason === null ? {} : { reason }) };
    await recordRemoval(act, { catheterId: known(recorder.catheterIds, number), removedAt: removed, record });
  }
}

/** Records what rounds found. */
export async function recordCare(recorder: Recorder, rounds: readonly CareRound[]): Promise<void> {
  for (const { ward, kind, writtenAt, found } of rounds) {
    const notes = found.map(({ catheter, at, items }) => ({
      ...{ catheterId: known(recorder.catheterIds, catheter), kind, at },
      ...(items === null ? {} : { items }),
    }));
    await writeNotes(recorder.act(ward, writtenAt), notes);
  }
}

/** Corrects what was charted wrongly: the reason of a review, and the hour of an insertion. */
export async function recordCorrections(recorder: Recorder, { courses }: DemoHospital): Promise<void> {
  const catheterOf = (stay: string) => {
    const course = courses.find((one) => one.stay === `SX-${stay}`);
    const catheter = course?.catheters[0];
    if (!course || !catheter) throw new Error(`the demo has no scene ${stay}`);
    return { catheter, catheterId: known(recorder.catheterIds, catheter.number) };
  };
  const late = catheterOf("late-entry");
  const wrong = late.catheter.reviews.find(({ indication }) => indication === "other");
  const corrected = recorder.act("3E", (wrong?.written ?? late.catheter.start) + 9 * 60 * minuteMs);
  const { notes } = await readCatheter(corrected, { catheterId: late.catheterId });
  const note = notes.find(({ indication }) => indication === "other");
  if (!note) throw new Error("the late entry of the demo is not there");
  const reason = "Chosen from the wrong line of the list";
  await correctNote(corrected, { noteId: note.noteId, changes: { indication: "wound-healing" }, confirm: [], reason });
  const { catheter, catheterId } = catheterOf("reinsertion");
  await changeCatheter(recorder.act("3E", catheter.start + 26 * 60 * minuteMs), {
    ...{ catheterId, confirm: [], reason: "Charted an hour late" },
    changes: { insertedAt: catheter.start - 60 * minuteMs },
  });
}

function inOrder(courses: readonly Course[], when: (catheter: DemoCatheter) => Instant) {
  const all = courses.flatMap((course) => course.catheters.map((catheter) => ({ course, catheter })));
  return all.sort((a, b) => when(a.catheter) - when(b.catheter));
}

function wardOfCatheter({ legs }: Course, at: Instant) {
  const leg = legAt(legs, at) ?? legs.findLast(({ from }) => from <= at) ?? legs[0];
  if (!leg) throw new Error("a stay of the demo has no ward");
  return leg.ward;
}

function known(ids: ReadonlyMap<string, number>, number: string): number {
  const id = ids.get(number);
  if (id === undefined) throw new Error(`the demo did not store ${number}`);
  return id;
}
