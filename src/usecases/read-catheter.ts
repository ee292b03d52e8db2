import type { readCatheter as endpoint } from "../../shared/api/catheters.ts";
import type { OutputOf } from "../../shared/endpoint.ts";
import { refuse } from "../../shared/problems.ts";
import { writeAudit } from "../store/audit.ts";
import { stayOfCatheter } from "../store/catheters.ts";
import { oldVersions } from "../store/entry-versions.ts";
import { notesOf } from "../store/notes.ts";
import { findPatient } from "../store/patients.ts";
import { type Act, recording } from "./act.ts";
import { catheterAnswer, noteAnswer } from "./entry-state.ts";

/** A catheter with its notes, and what it and they said before; the view is recorded. Refuses `not-found`. */
export function readCatheter(act: Act, { catheterId }: { catheterId: number }): Promise<OutputOf<typeof endpoint>> {
  const { facilityId } = act.actor;
  return act.store.tx(
    async (tx) => {
      const patient = await findPatient(tx, facilityId, { catheterId });
      const stay = await stayOfCatheter(tx, facilityId, catheterId);
      const catheter =
        stay.catheters.find((one) => one.id === catheterId) ?? refuse("not-found", "There is no such catheter.");
      const notes = await notesOf(tx, [catheterId]);
      const corrections = [
        ...(await oldVersions(tx, "catheter", [catheterId])),
        ...(await oldVersions(
          tx,
          "note",
          notes.map((note) => note.id),
        )),
      ].sort((a, b) => a.replacedAt - b.replacedAt);
      const patientIds = [patient.id, patient.survivorId];
      await writeAudit(tx, recording(act), { action: "view-catheter", patientIds, details: { catheterId } });
      return { ...catheterAnswer(stay.id, catheter), notes: notes.map(noteAnswer), corrections };
    },
    { snapshot: true },
  );
}
