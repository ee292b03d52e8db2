import type { RecordedOrganism, RecordedSpecimen } from "../domain/cultures/specimen.ts";
import { insertRows } from "./bulk.ts";
import { keepVersions } from "./entry-versions.ts";
import { addWordings, replaceWordings } from "./laboratory-words.ts";
import type { Recording } from "./patients.ts";
import { type CellValue, columnCells, type RowCell, type Rows, readRows } from "./read-rows.ts";
import type { Read, Tx } from "./store.ts";

const cells = columnCells("m", [
  ...["id", "version", "void_reason", "marks", "patient_id", "kind", "collected_at", "method", "status", "number"],
  ...["organisms", "recorded_at", "recorded_by"],
]);

/** Rows of a table with a patient, for the surviving patients of these ids: also of records merged into theirs. */
export function rowsOfSurvivors(rowCells: readonly RowCell[], table: string, alias: string): Rows {
  return {
    cells: rowCells,
    joins: [
      { table: "patient p", on: "p.survivor_id = given.value" },
      { table: `${table} ${alias}`, on: `${alias}.patient_id = p.id` },
    ],
  };
}

const ofSurvivor = rowsOfSurvivors(cells, "specimen", "m");
const byId: Rows = { cells, joins: [{ table: "specimen m", on: "m.id = given.value" }] };

/** The specimens of surviving patients, voided ones too, in the order of collection. */
export async function specimensOf(read: Read, survivorIds: readonly number[]): Promise<RecordedSpecimen[]> {
  const found = (await readRows(read, ofSurvivor, survivorIds)).map(specimenFromCells);
  return found.sort((a, b) => a.collectedAt - b.collectedAt || a.id - b.id);
}

/** The specimen of that id; null when there is none. */
export async function specimenOf(read: Read, specimenId: number): Promise<RecordedSpecimen | null> {
  const [row] = await readRows(read, byId, [specimenId]);
  return row ? specimenFromCells(row) : null;
}

function specimenFromCells(row: readonly CellValue[]): RecordedSpecimen {
  const [id, version, voidReason, marks, patientId, kind, collectedAt, method, status, number, ...said] = row;
  const [organisms, writtenAt, writtenBy] = said;
  return {
    ...{ id, version, voidReason, patientId, kind, collectedAt, method, status, number, writtenAt, writtenBy },
    marks: marks === "" ? [] : String(marks).split(" "),
    organisms: JSON.parse(String(organisms)) as RecordedOrganism[],
  } as RecordedSpecimen;
}

const table = {
  table: "specimen",
  columns: {
    id: "int",
    patient_id: "int",
    kind: "text",
    collected_at: "instant",
    method: "text",
    status: "text",
    number: "text",
    organisms: "text",
    marks: "text",
    recorded_at: "instant",
    recorded_by: "int",
  },
} as const;

/** Adds new specimens. When and by whom each was written down are its own. */
export async function addSpecimens(tx: Tx, specimens: readonly RecordedSpecimen[]): Promise<void> {
  const rows = specimens.map(({ id, patientId, kind, collectedAt, method, status, number, ...one }) => [
    ...[id, patientId, kind, collectedAt, method, status, number, JSON.stringify(one.organisms)],
    ...[one.marks.join(" "), one.writtenAt, one.writtenBy],
  ]);
  await insertRows(tx, table, rows);
  await addWordings(tx, specimens);
}

/** Puts away what a specimen said and stores what it says now; who wrote it down first, and when, stays. */
export async function replaceSpecimen(
  tx: Tx,
  by: Recording & { reason?: string },
  { old, now }: { old: RecordedSpecimen; now: RecordedSpecimen },
): Promise<void> {
  const { id, version, ...body } = old;
  await keepVersions(tx, by, [{ kind: "specimen", id, version, body }]);
  const { kind, collectedAt, method, status, number, organisms, marks, voidReason } = now;
  await tx.db.specimen.update({
    where: { id },
    data: {
      ...{ kind, method, status, number, voidReason, version: version + 1, collectedAt: new Date(collectedAt) },
      ...{ organisms: JSON.stringify(organisms), marks: marks.join(" "), voidKey: voidReason === null ? 0 : id },
    },
  });
  if (JSON.stringify(old.organisms) !== JSON.stringify(organisms)) await replaceWordings(tx, [now]);
}
