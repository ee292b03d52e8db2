import type { RecordedSign } from "../domain/cultures/sign.ts";
import { insertRows } from "./bulk.ts";
import { keepVersions } from "./entry-versions.ts";
import type { Recording } from "./patients.ts";
import { type CellValue, columnCells, type Rows, readRows } from "./read-rows.ts";
import { rowsOfSurvivors } from "./specimens.ts";
import type { Read, Tx } from "./store.ts";

const cells = columnCells("s", [
  ...["id", "version", "void_reason", "marks", "patient_id", "day", "at", "sign", "finding"],
  ...["value_hundredths", "unit", "other_cause", "last_day", "read_at", "recorded_at", "recorded_by"],
]);
const ofSurvivor = rowsOfSurvivors(cells, "sign", "s");
const byId: Rows = { cells, joins: [{ table: "sign s", on: "s.id = given.value" }] };

/** The signs of surviving patients, voided ones too, in the order of days; those without an hour come first. */
export async function signsOf(read: Read, survivorIds: readonly number[]): Promise<RecordedSign[]> {
  const found = (await readRows(read, ofSurvivor, survivorIds)).map(signFromCells);
  return found.sort((a, b) => a.day - b.day || (a.at ?? 0) - (b.at ?? 0) || a.id - b.id);
}

/** The sign of that id; null when there is none. */
export async function signOf(read: Read, signId: number): Promise<RecordedSign | null> {
  const [row] = await readRows(read, byId, [signId]);
  return row ? signFromCells(row) : null;
}

function signFromCells(row: readonly CellValue[]): RecordedSign {
  const [id, version, voidReason, marks, patientId, day, at, sign, finding, ...said] = row;
  const [hundredths, unit, otherCause, lastDay, readAt, writtenAt, writtenBy] = said;
  return {
    ...{ id, version, voidReason, patientId, day, at, sign, finding, lastDay, readAt, writtenAt, writtenBy },
    marks: marks === "" ? [] : String(marks).split(" "),
    temperature: hundredths === null ? null : { hundredths, unit },
    otherCause: Boolean(otherCause),
  } as RecordedSign;
}

const table = {
  table: "sign",
  columns: {
    id: "int",
    patient_id: "int",
    day: "int",
    at: "instant",
    sign: "text",
    finding: "text",
    value_hundredths: "int",
    unit: "text",
    other_cause: "bool",
    last_day: "int",
    read_at: "instant",
    marks: "text",
    recorded_at: "instant",
    recorded_by: "int",
  },
} as const;

/** Adds new signs. When and by whom each was written down are its own. */
export async function addSigns(tx: Tx, signs: readonly RecordedSign[]): Promise<void> {
  const rows = signs.map(({ id, patientId, day, at, sign, finding, temperature, otherCause, ...one }) => [
    ...[id, patientId, day, at, sign, finding, temperature?.hundredths ?? null, temperature?.unit ?? null, otherCause],
    ...[one.lastDay, one.readAt, one.marks.join(" "), one.writtenAt, one.writtenBy],
  ]);
  await insertRows(tx, table, rows);
}

/** Puts away what a sign said and stores what it says now; who wrote it down first, and when, stays. */
export async function replaceSign(
  tx: Tx,
  by: Recording & { reason?: string },
  { old, now }: { old: RecordedSign; now: RecordedSign },
): Promise<void> {
  const { id, version, ...body } = old;
  await keepVersions(tx, by, [{ kind: "sign", id, version, body }]);
  const { day, at, finding, temperature, otherCause, lastDay, readAt, marks, voidReason } = now;
  await tx.db.sign.update({
    where: { id },
    data: {
      ...{ day, finding, otherCause, voidReason, version: version + 1, at: at === null ? null : new Date(at) },
      ...{ lastDay, readAt: readAt === null ? null : new Date(readAt) },
      ...{ valueHundredths: temperature?.hundredths ?? null, unit: temperature?.unit ?? null },
      ...{ marks: marks.join(" "), voidKey: voidReason === null ? 0 : id },
    },
  });
}
