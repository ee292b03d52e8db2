import type { RecordedFinding } from "../domain/cultures/finding.ts";
import { insertRows } from "./bulk.ts";
import { keepVersions } from "./entry-versions.ts";
import type { Recording } from "./patients.ts";
import { type CellValue, columnCells, type Rows, readRows } from "./read-rows.ts";
import { rowsOfSurvivors } from "./specimens.ts";
import type { Read, Tx } from "./store.ts";

const cells = columnCells("f", [
  ...["id", "version", "void_reason", "marks", "patient_id", "finding", "day", "at", "present", "cells_per_mm3"],
  ...["recorded_at", "recorded_by"],
]);
const ofSurvivor = rowsOfSurvivors(cells, "finding", "f");
const byId: Rows = { cells, joins: [{ table: "finding f", on: "f.id = given.value" }] };

/** The findings of surviving patients, voided ones too, in the order of days. */
export async function findingsOf(read: Read, survivorIds: readonly number[]): Promise<RecordedFinding[]> {
  const found = (await readRows(read, ofSurvivor, survivorIds)).map(findingFromCells);
  return found.sort((a, b) => a.day - b.day || (a.at ?? 0) - (b.at ?? 0) || a.id - b.id);
}

/** The finding of that id; null when there is none. */
export async function findingOf(read: Read, findingId: number): Promise<RecordedFinding | null> {
  const [row] = await readRows(read, byId, [findingId]);
  return row ? findingFromCells(row) : null;
}

function findingFromCells(row: readonly CellValue[]): RecordedFinding {
  const [id, version, voidReason, marks, patientId, finding, day, at, present, cellsPerMm3, ...written] = row;
  const [writtenAt, writtenBy] = written;
  return {
    ...{ id, version, voidReason, patientId, finding, day, at, cellsPerMm3, writtenAt, writtenBy },
    marks: marks === "" ? [] : String(marks).split(" "),
    present: Boolean(present),
  } as RecordedFinding;
}

const table = {
  table: "finding",
  columns: {
    id: "int",
    patient_id: "int",
    finding: "text",
    day: "int",
    at: "instant",
    present: "bool",
    cells_per_mm3: "real",
    marks: "text",
    recorded_at: "instant",
    recorded_by: "int",
  },
} as const;

/** Adds a new finding. When and by whom it was written down is its own. */
export async function addFinding(tx: Tx, one: RecordedFinding): Promise<void> {
  const { id, patientId, finding, day, at, present, cellsPerMm3, marks, writtenAt, writtenBy } = one;
  const row = [id, patientId, finding, day, at, present, cellsPerMm3, marks.join(" "), writtenAt, writtenBy];
  await insertRows(tx, table, [row]);
}

/** Puts away what a finding said and stores what it says now; who wrote it down first, and when, stays. */
export async function replaceFinding(
  tx: Tx,
  by: Recording & { reason?: string },
  { old, now }: { old: RecordedFinding; now: RecordedFinding },
): Promise<void> {
  const { id, version, ...body } = old;
  await keepVersions(tx, by, [{ kind: "finding", id, version, body }]);
  const { day, at, present, cellsPerMm3, marks, voidReason } = now;
  await tx.db.finding.update({
    where: { id },
    data: {
      ...{ day, present, cellsPerMm3, voidReason, version: version + 1, at: at === null ? null : new Date(at) },
      ...{ marks: marks.join(" "), voidKey: voidReason === null ? 0 : id },
    },
  });
}
