import { Problem } from "../../../shared/problems.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import type { CatheterNote } from "../../domain/timeline/note.ts";
import { type NoteText, newNote } from "../../domain/timeline/write-note.ts";
import { writeAudit } from "../../store/audit.ts";
import { facility } from "../../store/facilities.ts";
import { addNotes } from "../../store/notes.ts";
import { lockPatient } from "../../store/patients.ts";
import { type Act, notInFuture, recording } from "../act.ts";
import { followNotes } from "./follow-notes.ts";
import { noteFaults } from "./note-faults.ts";

export type WriteNote = NoteText & {
  readonly catheterId: number;
  /** Pointers of unusual values that somebody has checked. */
  readonly confirm?: readonly string[] | undefined;
};

/**
 * Writes down a review, a confirmation, a care check or an amount of urine. It also says that the catheter was seen in
 * place. The record holds when it happened and when it was written.
 * Refuses, all faults at once: `not-in-place`, `indication-missing`, `indication-unknown`, `item-unknown`,
 * `out-of-bounds`, `unusual-value`; and `in-the-future`, `not-found`, `entry-voided`.
 */
export function writeNote(act: Act, input: WriteNote): Promise<{ noteId: number; version: number }> {
  const { catheterId, confirm = [], ...text } = input;
  notInFuture(act.now, { at: text.at });
  return act.store.tx(async (tx) => {
    const by = recording(act);
    const patient = await lockPatient(tx, by.facilityId, { catheterId });
    const zone = zoneNamed((await facility(tx, by.facilityId)).zone);
    const note: CatheterNote = newNote(
      { noteId: tx.newId(), catheterId, writtenAt: by.now, writtenBy: by.personId },
      saidByNote(text),
    );
    const [first, ...more] = await noteFaults(tx, by.facilityId, { note, zone, confirm });
    if (first) throw new Problem(first, ...more);
    await addNotes(tx, [note]);
    await followNotes(tx, by, { patientId: patient.id, catheterId, zone, cause: "write-note" });
    const details = { catheterId, noteId: note.id, kind: note.kind, outcome: note.outcome ?? undefined };
    await writeAudit(tx, by, { action: "write-note", patientIds: [patient.id], details });
    return { noteId: note.id, version: note.version };
  });
}

/** The fields of a note and nothing else that a door may have handed over. */
export function saidByNote({ kind, at, outcome, indication, items, amountMl, remark, marks }: NoteText): NoteText {
  const given = { outcome, indication, items, amountMl, remark, marks };
  const known = Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));
  return { kind, at, ...known };
}
