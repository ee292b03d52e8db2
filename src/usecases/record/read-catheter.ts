import type { readCatheter as endpoint } from "../../../shared/api/catheters.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { refuse } from "../../../shared/problems.ts";
import { oldVersions } from "../../store/entry-versions.ts";
import { notesOf } from "../../store/notes.ts";
import { findPatient } from "../../store/patients.ts";
import { loadTimeline } from "../../store/timelines.ts";
import type { Act } from "../act.ts";
import { catheterDaysTold } from "../months/catheter-days-told.ts";
import { view } from "../view.ts";
import { catheterAnswer, noteAnswer } from "./entry-state.ts";

/** A catheter with its notes, and what it and they said before; the view is recorded. Refuses `not-found`. */
export function readCatheter(act: Act, { catheterId }: { catheterId: number }): Promise<OutputOf<typeof endpoint>> {
  const { facilityId } = act.actor;
  return view(act, async (read, seen) => {
    const patient = await findPatient(read, facilityId, { catheterId });
    const survivor = await findPatient(read, facilityId, { patientId: patient.survivorId });
    const timeline = await loadTimeline(read, patient.survivorId);
    const recorded = timeline.stays.flatMap((stay) => stay.catheters.map((catheter) => ({ stay, catheter })));
    const { stay, catheter } =
      recorded.find((one) => one.catheter.id === catheterId) ?? refuse("not-found", "There is no such catheter.");
    const all = await notesOf(
      read,
      recorded.map((one) => one.catheter.id),
    );
    const notes = all.filter((note) => note.catheterId === catheterId);
    const corrections = [
      ...(await oldVersions(read, "catheter", [catheterId])),
      ...(await oldVersions(
        read,
        "note",
        notes.map((note) => note.id),
      )),
    ].sort((a, b) => a.replacedAt - b.replacedAt);
    const patientIds = [patient.id, survivor.id];
    seen({ action: "view-catheter", patientIds, details: { catheterId } });
    const told = await catheterDaysTold(read, act, { patient: { ...timeline, notes: all }, catheterId });
    const whose = { patientId: survivor.id, identifier: survivor.identifier };
    return { ...catheterAnswer(stay.id, catheter), ...whose, ...told, notes: notes.map(noteAnswer), corrections };
  });
}
