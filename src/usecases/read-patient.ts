import type { readPatient as endpoint } from "../../shared/api/patients.ts";
import type { OutputOf } from "../../shared/endpoint.ts";
import { writeAudit } from "../store/audit.ts";
import { notesOf } from "../store/notes.ts";
import { findPatient } from "../store/patients.ts";
import { loadTimeline } from "../store/timelines.ts";
import { type Act, recording } from "./act.ts";
import { catheterAnswer, noteAnswer, stayAnswer, wardStayAnswer } from "./entry-state.ts";
import { patientAnswer } from "./find-patients.ts";

/** A patient's record over all stays, with those of records merged into it; the view is recorded. Refuses `not-found`. */
export function readPatient(act: Act, { patientId }: { patientId: number }): Promise<OutputOf<typeof endpoint>> {
  return act.store.tx(
    async (tx) => {
      const patient = await findPatient(tx, act.actor.facilityId, { patientId });
      const { stays } = await loadTimeline(tx, patient.survivorId);
      const catheters = stays.flatMap((stay) => stay.catheters.map((catheter) => ({ stayId: stay.id, catheter })));
      const notes = await notesOf(
        tx,
        catheters.map(({ catheter }) => catheter.id),
      );
      const patientIds = [patientId, patient.survivorId];
      await writeAudit(tx, recording(act), { action: "view-patient", patientIds, details: { patientId } });
      return {
        patient: patientAnswer(patient),
        survivorId: patient.survivorId,
        stays: stays.map(stayAnswer),
        wardStays: stays.flatMap((stay) => stay.wardStays.map((w) => ({ ...wardStayAnswer(w), stayId: stay.id }))),
        catheters: catheters.map(({ stayId, catheter }) => catheterAnswer(stayId, catheter)),
        notes: notes.map(noteAnswer),
      };
    },
    { snapshot: true },
  );
}
