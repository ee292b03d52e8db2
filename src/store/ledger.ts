import type { PatientDayRow } from "../domain/counting/patient-days.ts";
import type { DayNumber } from "../domain/days/day-number.ts";
import { idList, insertRows, jsonRows } from "./bulk.ts";
import type { Read, Tx } from "./store.ts";
import { touchDays } from "./trace.ts";

const table = {
  table: "patient_day",
  columns: { patient_id: "int", day: "int", ward_id: "int", stay_id: "int", catheter: "bool" },
} as const;

/** What the ledger must say of a patient from a day on. */
export interface LedgerPart {
  readonly patientId: number;
  readonly fromDay: DayNumber;
  readonly rows: readonly PatientDayRow[];
}

/** Ledger rows of a patient as stored. */
export interface StoredPatientDay extends PatientDayRow {
  readonly patientId: number;
}

/** Makes the ledger say what the parts say, from their days on; rows that are right are left alone. */
export async function postToLedger(tx: Tx, parts: readonly LedgerPart[]): Promise<{ removed: number; added: number }> {
  const stored = await storedFrom(tx, parts);
  const removed: (readonly [number, number])[] = [];
  const added: (readonly [number, number, number, number, boolean])[] = [];
  for (const part of parts) {
    const old = new Map((stored.get(part.patientId) ?? []).map((row) => [row.day, row]));
    for (const row of part.rows) {
      const before = old.get(row.day);
      old.delete(row.day);
      if (before && sameRow(before, row)) continue;
      if (before) removed.push([part.patientId, row.day]);
      added.push([part.patientId, row.day, row.wardId, row.stayId, row.catheter]);
    }
    for (const day of old.keys()) removed.push([part.patientId, day]);
  }
  // One by one: of many patients and years there are more days than a call can have arguments.
  for (const [, day] of [...removed, ...added]) touchDays(tx, { first: day, last: day });
  await removeDays(tx, removed);
  await insertRows(tx, table, added);
  return { removed: removed.length, added: added.length };
}

function sameRow(a: PatientDayRow, b: PatientDayRow): boolean {
  return a.wardId === b.wardId && a.stayId === b.stayId && a.catheter === b.catheter;
}

async function storedFrom(tx: Tx, parts: readonly LedgerPart[]): Promise<Map<number, StoredPatientDay[]>> {
  const first = Math.min(...parts.map((part) => part.fromDay));
  const rows = await patientDays(
    tx,
    parts.map((part) => part.patientId),
    first,
  );
  const from = new Map(parts.map((part) => [part.patientId, part.fromDay]));
  const byPatient = new Map<number, StoredPatientDay[]>();
  for (const row of rows) {
    if (row.day < (from.get(row.patientId) ?? first)) continue;
    const list = byPatient.get(row.patientId);
    if (list) list.push(row);
    else byPatient.set(row.patientId, [row]);
  }
  return byPatient;
}

/** The ledger rows of these patients from a day on, in the order of patient and day. */
export async function patientDays(
  read: Read,
  patientIds: readonly number[],
  fromDay: DayNumber,
): Promise<StoredPatientDay[]> {
  const rows = await read.sql.rows<RawRow>(
    `SELECT patient_id, day, ward_id, stay_id, catheter FROM patient_day
     WHERE patient_id IN ${idList(read, 1)} AND day >= ${read.kind === "sqlite" ? "$2" : "$2::int"}
     ORDER BY patient_id, day`,
    JSON.stringify(patientIds),
    fromDay,
  );
  return rows.map(rowFrom);
}

interface RawRow {
  patient_id: number | bigint;
  day: number | bigint;
  ward_id: number | bigint;
  stay_id: number | bigint;
  catheter: boolean | number | bigint;
}

function rowFrom(row: RawRow): StoredPatientDay {
  return {
    patientId: Number(row.patient_id),
    day: Number(row.day),
    wardId: Number(row.ward_id),
    stayId: Number(row.stay_id),
    catheter: Boolean(row.catheter),
  };
}

async function removeDays(tx: Tx, days: readonly (readonly [number, number])[]): Promise<void> {
  if (days.length === 0) return;
  const cell = (i: number) => (tx.kind === "sqlite" ? `value ->> ${i}` : `(value ->> ${i})::int`);
  await tx.sql.run(
    `DELETE FROM patient_day WHERE (patient_id, day) IN (SELECT ${cell(0)}, ${cell(1)} FROM ${jsonRows(tx, 1)})`,
    JSON.stringify(days),
  );
}
