import type { ItemState, NoteKind, ReviewOutcome } from "../../shared/catheter-words.ts";
import type { CatheterNote } from "../domain/timeline/note.ts";
import type { Mark } from "../domain/timeline/timeline.ts";
import { insertRows } from "./bulk.ts";
import { keepVersions } from "./entry-versions.ts";
import type { CatheterNote as NoteModel } from "./generated/sqlite/client.ts";
import { inChunks } from "./in-chunks.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";

/** Notes about these catheters, voided ones too, in the order in which they happened. */
export async function notesOf(read: Read, catheterIds: readonly number[]): Promise<CatheterNote[]> {
  const rows = await inChunks(catheterIds, (chunk) =>
    read.db.catheterNote.findMany({ where: { catheterId: { in: chunk } }, orderBy: [{ at: "asc" }, { id: "asc" }] }),
  );
  return rows.map(noteFrom);
}

/** The note of that id; null when there is none. */
export async function noteOf(read: Read, noteId: number): Promise<CatheterNote | null> {
  const row = await read.db.catheterNote.findUnique({ where: { id: noteId } });
  return row && noteFrom(row);
}

const table = {
  table: "catheter_note",
  columns: {
    id: "int",
    catheter_id: "int",
    kind: "text",
    at: "instant",
    outcome: "text",
    indication: "text",
    items: "text",
    amount_ml: "real",
    remark: "text",
    marks: "text",
    recorded_at: "instant",
    recorded_by: "int",
  },
} as const;

/** Adds a new note. When and by whom it was written down are its own. */
export async function addNote(tx: Tx, note: CatheterNote): Promise<void> {
  const { id, catheterId, kind, at, outcome, indication, amountMl, remark, writtenAt, writtenBy } = note;
  const said = [outcome, indication, itemsText(note), amountMl, remark, note.marks.join(" ")];
  await insertRows(tx, table, [[id, catheterId, kind, at, ...said, writtenAt, writtenBy]]);
}

/** Puts away what a note said and stores what it says now; who wrote it down first, and when, stays. */
export async function replaceNote(
  tx: Tx,
  by: Recording & { reason?: string },
  { old, now }: { old: CatheterNote; now: CatheterNote },
): Promise<void> {
  const { id, version, ...body } = old;
  await keepVersions(tx, by, [{ kind: "note", id, version, body }]);
  const { at, outcome, indication, amountMl, remark, voidReason } = now;
  await tx.db.catheterNote.update({
    where: { id },
    data: {
      ...{ outcome, indication, amountMl, remark, voidReason, version: version + 1 },
      ...{ at: new Date(at), items: itemsText(now), marks: now.marks.join(" "), voidKey: voidReason === null ? 0 : id },
    },
  });
}

function itemsText({ items }: CatheterNote): string | null {
  return items === null ? null : JSON.stringify(items);
}

function noteFrom(row: NoteModel): CatheterNote {
  const { id, version, voidReason, catheterId, indication, amountMl, remark } = row;
  return {
    ...{ id, version, voidReason, catheterId, indication, amountMl, remark },
    marks: row.marks === "" ? [] : (row.marks.split(" ") as Mark[]),
    kind: row.kind as NoteKind,
    at: row.at.getTime(),
    writtenAt: row.recordedAt.getTime(),
    writtenBy: row.recordedBy,
    outcome: row.outcome as ReviewOutcome | null,
    items: row.items === null ? null : (JSON.parse(row.items) as Record<string, ItemState>),
  };
}
