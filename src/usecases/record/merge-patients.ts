import { Problem, refuse } from "../../../shared/problems.ts";
import { runningOn } from "../../domain/timeline/changed-stretches.ts";
import { overlapFaults } from "../../domain/timeline/check-stay.ts";
import { beginning } from "../../domain/timeline/first-change.ts";
import { type PatientTimeline, stands } from "../../domain/timeline/timeline.ts";
import { writeAudit } from "../../store/audit.ts";
import { addMerge, mergedGroup, setSurvivor, standingMerge, undoMerge } from "../../store/merges.ts";
import { findPatient, lockPatients } from "../../store/patients.ts";
import type { Tx } from "../../store/store.ts";
import { loadTimelines } from "../../store/timelines.ts";
import { touchTimes } from "../../store/trace.ts";
import { type Act, recording } from "../act.ts";
import { determineAgain } from "../cultures/determine-again.ts";
import { recount } from "../store-change.ts";

/**
 * Two records turn out to be one person: the days of `fromId` count for `intoId` from now on. Every entry stays with
 * the record it was made for, so that a merge can be undone.
 * Refuses `same-patient`, `already-merged`, and `stay-overlaps` when both records claim the person at one time: one
 * of the two stays has to be corrected or voided first.
 */
export function mergePatients(act: Act, input: { fromId: number; intoId: number }): Promise<{ mergeId: number }> {
  const by = recording(act);
  const { fromId, intoId } = input;
  return act.store.tx(async (tx) => {
    await lockSurvivors(tx, by.facilityId, [fromId, intoId]);
    for (const patientId of [fromId, intoId]) {
      const patient = await findPatient(tx, by.facilityId, { patientId });
      if (patient.survivorId !== patientId)
        refuse("already-merged", "This record was merged into another one.", {
          other: `patient ${patient.survivorId}`,
        });
    }
    if (fromId === intoId) refuse("same-patient", "A record cannot be merged into itself.", { pointer: "/fromId" });
    const timelines = await loadTimelines(tx, [fromId, intoId]);
    refuseOverlap(timelines);
    const group = await mergedGroup(tx, fromId);
    const mergeId = await addMerge(tx, by, input);
    await setSurvivor(tx, group, intoId);
    await recountAll(tx, act, { patientIds: [fromId, intoId], moved: group });
    await determineAgain(tx, by, { patientIds: [fromId, intoId], cause: "merge-patients" });
    await writeAudit(tx, by, { action: "merge-patients", patientIds: [fromId, intoId], details: { mergeId } });
    return { mergeId };
  });
}

/**
 * Takes a merge back: each record counts for itself again. `patientId` is the record that was merged into, when the
 * caller names it. Refuses `not-found` for a merge that does not stand, or that is another record's.
 */
export function unmergePatients(
  act: Act,
  input: { patientId?: number; mergeId: number; reason: string },
): Promise<{ mergeId: number }> {
  const by = recording(act);
  const { patientId, mergeId, reason } = input;
  return act.store.tx(async (tx) => {
    const find = async () => {
      const merge = await standingMerge(tx, by.facilityId, mergeId);
      const isOf = patientId === undefined || merge?.intoId === patientId;
      return merge && isOf ? merge : refuse("not-found", "There is no such merge.");
    };
    await lockSurvivors(tx, by.facilityId, [(await find()).fromId]);
    const merge = await find();
    const { survivorId } = await findPatient(tx, by.facilityId, { patientId: merge.fromId });
    await undoMerge(tx, by, merge);
    const moved = await mergedGroup(tx, merge.fromId);
    await setSurvivor(tx, moved, merge.fromId);
    await recountAll(tx, act, { patientIds: [survivorId, merge.fromId], moved });
    const patientIds = [merge.fromId, survivorId];
    await determineAgain(tx, { ...by, reason }, { patientIds, cause: "unmerge-patients" });
    await writeAudit(tx, by, { action: "unmerge-patients", patientIds, details: { mergeId, reason } });
    return { mergeId };
  });
}

/** Takes the rows of the patients' survivors, again when another merge came first. */
async function lockSurvivors(tx: Tx, facilityId: number, patientIds: readonly number[]): Promise<void> {
  const survivors = async () => {
    const rows = [];
    for (const patientId of patientIds) rows.push(await findPatient(tx, facilityId, { patientId }));
    return [...new Set(rows.map((row) => row.survivorId))];
  };
  for (let ids = await survivors(); ; ) {
    await lockPatients(tx, facilityId, ids);
    const now = await survivors();
    if (now.every((id) => ids.includes(id))) return;
    ids = now;
  }
}

function refuseOverlap(timelines: ReadonlyMap<number, PatientTimeline>): void {
  const [a, b] = [...timelines.values()];
  const faults = (a?.stays ?? [])
    .filter(stands)
    .flatMap((stay) => (b?.stays ?? []).flatMap((other) => overlapFaults(stay, other)));
  const [first, ...more] = faults;
  if (first) throw new Problem(first, ...more);
}

/** Counts both again. `moved`: the records whose stays count for the other one from now on. */
async function recountAll(
  tx: Tx,
  act: Act,
  { patientIds, moved }: { readonly patientIds: readonly number[]; readonly moved: readonly number[] },
): Promise<void> {
  const timelines = [...(await loadTimelines(tx, patientIds)).values()];
  const stays = timelines.flatMap((timeline) => timeline.stays).filter(({ patientId }) => moved.includes(patientId));
  const stretches = stays.map((stay) => ({ from: beginning(stay), to: stay.dischargedAt }));
  // A catheter of one record can go on in a stay of the other, in another month.
  touchTimes(tx, ...runningOn(stretches, ...timelines));
  const starts = timelines.flatMap((timeline) => timeline.stays.map(beginning));
  if (starts.length === 0) return;
  const from = Math.min(...starts);
  await recount(
    tx,
    recording(act),
    timelines.map((timeline) => ({ timeline, from })),
  );
}
