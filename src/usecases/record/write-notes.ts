import { type Fault, Problem, refuse } from "../../../shared/problems.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import { hasNoHour, type PatientTimeline } from "../../domain/timeline/timeline.ts";
import { newNote } from "../../domain/timeline/write-note.ts";
import { writeAudit } from "../../store/audit.ts";
import { patientsOfCatheters } from "../../store/catheters.ts";
import { facility } from "../../store/facilities.ts";
import { addNotes } from "../../store/notes.ts";
import { lockPatients } from "../../store/patients.ts";
import type { Tx } from "../../store/store.ts";
import { loadTimelines } from "../../store/timelines.ts";
import { type Act, notInFuture, recording } from "../act.ts";
import { loadPolicies } from "../settings/load-policy.ts";
import { followNotes } from "./follow-notes.ts";
import { faultsInStay } from "./note-faults.ts";
import { saidByNote, type WriteNote } from "./write-note.ts";

/**
 * Writes down what a round found at many catheters: all of it or nothing, with one audit entry. Each note is judged as
 * one that is written alone. Refuses what those are refused for, all faults at once; each names its note.
 */
export function writeNotes(act: Act, inputs: readonly WriteNote[]): Promise<{ noteIds: number[] }> {
  for (const { at } of inputs) notInFuture(act.now, { at });
  const work = async (tx: Tx) => {
    const by = recording(act);
    const patientIds = await patientsOfCatheters(tx, by.facilityId, [
      ...new Set(inputs.map(({ catheterId }) => catheterId)),
    ]);
    await lockPatients(tx, by.facilityId, patientIds);
    const places = placesOf([...(await loadTimelines(tx, patientIds)).values()]);
    const zone = zoneNamed((await facility(tx, by.facilityId)).zone);
    const policyOn = await loadPolicies(tx, by.facilityId);
    const faults: Fault[] = [];
    const notes = inputs.map(({ confirm = [], ...input }, i) => {
      const { catheterId } = input;
      const writing = { noteId: tx.newId(), catheterId, writtenAt: by.now, writtenBy: by.personId };
      const note = newNote(writing, saidByNote(input));
      const place = places.get(catheterId) ?? refuse("not-found", "There is no such catheter.", { pointer: `/${i}` });
      const found = faultsInStay(place.stay, { note, zone, confirm, policyOn });
      faults.push(...found.map((fault) => ({ ...fault, pointer: `/${i}${fault.pointer}` })));
      return note;
    });
    const [first, ...more] = faults;
    if (first) throw new Problem(first, ...more);
    await addNotes(tx, notes);
    for (const catheterId of new Set(notes.map((note) => note.catheterId))) {
      const place = places.get(catheterId);
      if (place && hasNoHour(place.catheter, "removedAt"))
        await followNotes(tx, by, { patientId: place.patientId, catheterId, zone, cause: "write-note" });
    }
    const noteIds = notes.map(({ id }) => id);
    await writeAudit(tx, by, { action: "write-note", patientIds, details: { noteIds } });
    return { noteIds };
  };
  return act.store.tx(work, { ids: inputs.length + 4 });
}

/** Each catheter of some patients with its stay and its surviving patient. */
function placesOf(timelines: readonly PatientTimeline[]) {
  return new Map(
    timelines.flatMap(({ patientId, stays }) =>
      stays.flatMap((stay) => stay.catheters.map((catheter) => [catheter.id, { patientId, stay, catheter }] as const)),
    ),
  );
}
