import type { ItemState } from "../../shared/catheter-words.ts";
import { byTime, type CatheterNote } from "../domain/timeline/note.ts";
import { insertRows } from "./bulk.ts";
import { keepVersions } from "./entry-versions.ts";
import type { Recording } from "./patients.ts";
import { type CellValue, columnCells, type Rows, readRows } from "./read-rows.ts";
import type { Read, Tx } from "./store.ts";
import { touchTimes } from "./trace.ts";

/** Notes about these catheters, voided ones too, in the order in which they happened. Only reviews when asked so. */
export async function notesOf(
  read: Read,
  catheterIds: readonly number[],
  { reviewsOnly = false } = {},
): Promise<CatheterNote[]> {
  const rows = await readRows(read, reviewsOnly ? reviewRows : noteRows, catheterIds);
  return rows.map(noteFromCells).sort(byTime);
}

const cells = columnCells("n", [
  ...["id", "version", "void_reason", "marks", "catheter_id", "kind", "at", "recorded_at", "recorded_by"],
  ...["outcome", "indication", "items", "amount_ml", "remark"],
]);
const noteRows: Rows = { cells, joins: [{ table: "catheter_note n", on: "n.catheter_id = given.value" }] };
const reviewRows: Rows = {
  cells,
  joins: [{ table: "catheter_note n", on: "n.catheter_id = given.value AND n.kind = 'review'" }],
};

function noteFromCells(row: readonly CellValue[]): CatheterNote {
  const [id, version, voidReason, marks, catheterId, kind, at, writtenAt, writtenBy, ...said] = row;
  const [outcome, indication, items, amountMl, remark] = said;
  return {
    ...{ id, version, voidReason, catheterId, kind, at, writtenAt, writtenBy, outcome, indication, amountMl, remark },
    marks: marks === "" ? [] : String(marks).split(" "),
    items: typeof items === "string" ? (JSON.parse(items) as Record<string, ItemState>) : null,
  } as CatheterNote;
}

/** The note of that id; null when there is none. */
export async function noteOf(read: Read, noteId: number): Promise<CatheterNote | null> {
  const [row] = await readRows(read, { cells, joins: [{ table: "catheter_note n", on: "n.id = given.value" }] }, [
    noteId,
  ]);
  return row ? noteFromCells(row) : null;
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

/** Adds new notes. When and by whom each was written down are its own. */
export async function addNotes(tx: Tx, notes: readonly CatheterNote[]): Promise<void> {
  // What was found or decided holds until the next note.
  touchTimes(tx, ...notes.map(({ at }) => ({ from: at, to: null })));
  const rows = notes.map((note) => {
    const { id, catheterId, kind, at, outcome, indication, amountMl, remark, writtenAt, writtenBy } = note;
    const said = [outcome, indication, itemsText(note), amountMl, remark, note.marks.join(" ")];
    return [id, catheterId, kind, at, ...said, writtenAt, writtenBy];
  });
  await insertRows(tx, table, rows);
}

/** Stores what became of notes, in order: new ones without `old` are added, the others replaced. */
export async function storeNotes(
  tx: Tx,
  by: Recording,
  changes: readonly { readonly old: CatheterNote | null; readonly now: CatheterNote }[],
): Promise<void> {
  await addNotes(
    tx,
    changes.flatMap(({ old, now }) => (old === null ? [now] : [])),
  );
  for (const { old, now } of changes) if (old !== null) await replaceNote(tx, by, { old, now });
}

/** Puts away what a note said and stores what it says now; who wrote it down first, and when, stays. */
export async function replaceNote(
  tx: Tx,
  by: Recording & { reason?: string },
  { old, now }: { old: CatheterNote; now: CatheterNote },
): Promise<void> {
  touchTimes(tx, { from: Math.min(old.at, now.at), to: null });
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
