import { z } from "zod";
import { noteState } from "../../../shared/api/entries.ts";
import type { AuditAction } from "../../../shared/audit-words.ts";
import { type Fault, Problem, type ProblemCode, refuse } from "../../../shared/problems.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import type { CatheterNote } from "../../domain/timeline/note.ts";
import type { Mark } from "../../domain/timeline/timeline.ts";
import { correctNote as decide, type NoteChanges } from "../../domain/timeline/write-note.ts";
import { writeAudit } from "../../store/audit.ts";
import { facility } from "../../store/facilities.ts";
import { noteOf, replaceNote } from "../../store/notes.ts";
import { lockPatient } from "../../store/patients.ts";
import type { Tx } from "../../store/store.ts";
import { type Act, notInFuture, recording } from "../act.ts";
import { sameVersion } from "../same-version.ts";
import { noteAnswer } from "./entry-state.ts";
import { followNotes } from "./follow-notes.ts";
import { noteFaults } from "./note-faults.ts";

/** A change of a note: why, and the version that the person saw. */
export interface NoteChange {
  readonly noteId: number;
  readonly reason: string;
  readonly seenVersion?: number | undefined;
}

/**
 * Corrects a note. What was not changed is not judged again: it was checked when it was written, and lists may be others
 * by now. Refuses `stale-version`, `field-of-another-note`, and what a new note is refused for.
 */
export function correctNote(
  act: Act,
  input: NoteChange & {
    readonly changes: NoteChanges;
    readonly confirm: readonly string[];
    readonly marks?: readonly Mark[];
  },
): Promise<{ noteId: number; version: number }> {
  const { changes, confirm, marks = [] } = input;
  notInFuture(act.now, { at: changes.at });
  return changeNote(act, input, {
    action: "correct-note",
    decide: async (tx, old) => {
      const note = decide(old, changes, marks);
      const zone = zoneNamed((await facility(tx, act.actor.facilityId)).zone);
      const faults = await noteFaults(tx, act.actor.facilityId, { note, zone, confirm });
      const [first, ...more] = faults.filter((fault) => !isLeftAlone(fault, changes));
      if (first) throw new Problem(first, ...more);
      return note;
    },
  });
}

/** Faults that one field has by itself, whatever the others say. */
const ofOneField = new Set<ProblemCode>(["indication-unknown", "item-unknown", "out-of-bounds", "unusual-value"]);

function isLeftAlone({ code, pointer }: Fault, changes: NoteChanges): boolean {
  const [, field = ""] = pointer.split("/");
  return ofOneField.has(code) && !Object.hasOwn(changes, field);
}

/** The one way in which a note is changed: lock, load, compare versions, decide, store, write the audit entry. */
export function changeNote(
  act: Act,
  { noteId, reason, seenVersion }: NoteChange,
  change: { action: AuditAction; decide: (tx: Tx, old: CatheterNote) => Promise<CatheterNote> },
): Promise<{ noteId: number; version: number }> {
  return act.store.tx(async (tx) => {
    const by = { ...recording(act), reason };
    const patient = await lockPatient(tx, by.facilityId, { noteId });
    const old = (await noteOf(tx, noteId)) ?? refuse("not-found", "There is no such note.");
    if (old.voidReason !== null)
      refuse("entry-voided", "This note is marked as entered in error.", { other: `note ${noteId}` });
    sameVersion(old, seenVersion, z.encode(noteState, noteAnswer(old)));
    const now = await change.decide(tx, old);
    await replaceNote(tx, by, { old, now });
    const zone = zoneNamed((await facility(tx, by.facilityId)).zone);
    const { catheterId } = old;
    await followNotes(tx, by, { patientId: patient.id, catheterId, zone, cause: change.action });
    const details = { noteId, catheterId, version: now.version, reason };
    await writeAudit(tx, by, { action: change.action, patientIds: [patient.id], details });
    return { noteId, version: now.version };
  });
}
