import type { readPatient as endpoint } from "../../../shared/api/patients.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { oldVersions } from "../../store/entry-versions.ts";
import { mergedGroup, mergesAmong } from "../../store/merges.ts";
import { notesOf } from "../../store/notes.ts";
import { findPatient } from "../../store/patients.ts";
import { loadTimeline } from "../../store/timelines.ts";
import type { Act } from "../act.ts";
import { uncountedOfStays } from "../months/uncounted-days.ts";
import { view } from "../view.ts";
import { catheterAnswer, noteAnswer, stayAnswer, wardStayAnswer } from "./entry-state.ts";
import { patientAnswer } from "./find-patients.ts";

/** A patient's record over all stays, with those of records merged into it; the view of each is recorded. Refuses `not-found`. */
export function readPatient(act: Act, { patientId }: { patientId: number }): Promise<OutputOf<typeof endpoint>> {
  return view(act, async (read, seen) => {
    const patient = await findPatient(read, act.actor.facilityId, { patientId });
    const survivor = await findPatient(read, act.actor.facilityId, { patientId: patient.survivorId });
    const group = await mergedGroup(read, survivor.id);
    const merges = await mergesAmong(read, group);
    const { stays } = await loadTimeline(read, patient.survivorId);
    const catheters = stays.flatMap((stay) => stay.catheters.map((catheter) => ({ stayId: stay.id, catheter })));
    const notes = await notesOf(
      read,
      catheters.map(({ catheter }) => catheter.id),
    );
    const patientIds = [...new Set([patientId, ...group])];
    seen({ action: "view-patient", patientIds, details: { patientId } });
    return {
      patient: patientAnswer(patient),
      survivorId: survivor.id,
      survivorIdentifier: survivor.identifier,
      merges: merges.map(({ id, ...merge }) => ({ ...merge, mergeId: id })),
      stays: stays.map(stayAnswer),
      wardStays: stays.flatMap((stay) => stay.wardStays.map((w) => ({ ...wardStayAnswer(w), stayId: stay.id }))),
      catheters: catheters.map(({ stayId, catheter }) => catheterAnswer(stayId, catheter)),
      notes: notes.map(noteAnswer),
      uncounted: await uncountedOfStays(read, act, stays),
      corrections: await oldVersions(read, "patient", [patientId]),
    };
  });
}
