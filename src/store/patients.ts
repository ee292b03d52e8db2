import { refuse } from "../../shared/problems.ts";
import type { DayNumber, Instant } from "../domain/days/day-number.ts";
import { idList, insertRows, textList } from "./bulk.ts";
import { rowsOf, writtenRows } from "./columns.ts";
import { inChunks } from "./in-chunks.ts";
import { type PatientKey, patientIdOf } from "./patient-of-entry.ts";
import type { Read, Tx } from "./store.ts";

export interface PatientRow {
  readonly id: number;
  readonly facilityId: number;
  readonly identifier: string;
  readonly survivorId: number;
  readonly mergedIntoId: number | null;
  readonly version: number;
  readonly birthDay: DayNumber | null;
  readonly sex: string | null;
}

const patientColumns = {
  table: "patient",
  columns: {
    id: "int",
    facilityId: "int",
    identifier: "text",
    survivorId: "int",
    mergedIntoId: "int?",
    version: "int",
    birthDay: "int?",
    sex: "text?",
  },
} as const;

/**
 * Takes the patient's row for this transaction: nobody else writes about the patient until it ends. Returns the
 * surviving patient, whose ledger holds the days. Every write about a patient begins here.
 * Refuses `not-found`, also for a patient of another facility.
 */
export async function lockPatient(tx: Tx, facilityId: number, key: PatientKey): Promise<PatientRow> {
  await shareFacility(tx, facilityId);
  for (;;) {
    const found = await findPatient(tx, facilityId, key);
    const next = "UPDATE patient SET version = version + 1 WHERE id = $1";
    const [locked] = await writtenRows(tx, patientColumns, next, found.survivorId);
    if (!locked) throw new Error(`patient ${found.id} has no surviving record`);
    // SQLite has one writer: nothing came between.
    if (tx.kind === "sqlite") return locked;
    const again = await findPatient(tx, facilityId, key);
    // A merge may have come first while this transaction waited; then another row has to be taken.
    if (again.survivorId === locked.id) return locked;
  }
}

/**
 * Counting rules of the facility hold still while a patient is written: on PostgreSQL a change of a ward's setting or
 * of the census waits for the writers, and they for it. SQLite has one writer anyhow.
 */
async function shareFacility(tx: Tx, facilityId: number): Promise<void> {
  if (tx.kind === "postgresql") await tx.sql.rows("SELECT id FROM facility WHERE id = $1::int FOR SHARE", facilityId);
}

/**
 * The patient that a key leads to. Refuses `not-found`. The entry is read first, by its own id: asked in one question,
 * the databases search the patients of the whole facility for it.
 */
export async function findPatient(read: Read, facilityId: number, key: PatientKey): Promise<PatientRow> {
  const id = await patientIdOf(read, key);
  if (id === null) return refuse("not-found", "There is no such record in this facility.");
  const [patient] = await rowsOf(read, patientColumns, "WHERE id = $1 AND facility_id = $2", id, facilityId);
  return patient ?? refuse("not-found", "There is no such record in this facility.");
}

/** The patients of a facility that have these identifiers, by identifier. */
export async function patientsByIdentifier(
  read: Read,
  facilityId: number,
  identifiers: readonly string[],
): Promise<Map<string, PatientRow>> {
  const where = `WHERE facility_id = $1 AND identifier IN ${textList(read, 2)}`;
  const rows = await rowsOf(read, patientColumns, where, facilityId, JSON.stringify(identifiers));
  return new Map(rows.map((row) => [row.identifier, row]));
}

/** Takes the rows of several surviving patients, in the order of ids, so that no two transactions wait for each other. */
export async function lockPatients(tx: Tx, facilityId: number, ids: readonly number[]): Promise<void> {
  await shareFacility(tx, facilityId);
  const list = JSON.stringify([...new Set(ids)]);
  if (tx.kind === "postgresql")
    await tx.sql.rows(`SELECT id FROM patient WHERE id IN ${idList(tx, 1)} ORDER BY id FOR UPDATE`, list);
  await tx.sql.run(`UPDATE patient SET version = version + 1 WHERE id IN ${idList(tx, 1)}`, list);
}

export interface NewPatient {
  readonly id: number;
  readonly identifier: string;
  readonly birthDay: DayNumber | null;
  readonly sex: string | null;
}

/** Who records, where and when: what every stored entry carries. */
export interface Recording {
  readonly facilityId: number;
  readonly personId: number;
  readonly now: Instant;
}

const patientTable = {
  table: "patient",
  columns: {
    id: "int",
    facility_id: "int",
    identifier: "text",
    birth_day: "int",
    sex: "text",
    survivor_id: "int",
    version: "int",
    recorded_at: "instant",
    recorded_by: "int",
  },
} as const;

/** Makes the patients whose identifiers are new. Safe against a twin made meanwhile. */
export async function ensurePatients(tx: Tx, by: Recording, patients: readonly NewPatient[]): Promise<void> {
  const rows = patients.map(({ id, identifier, birthDay, sex }) => [
    ...[id, by.facilityId, identifier, birthDay, sex],
    ...[id, 1, by.now, by.personId],
  ]);
  await insertRows(tx, patientTable, rows, "ON CONFLICT (facility_id, identifier) DO NOTHING");
}

/** The id of the patient with that identifier, who is made when there is none. */
export async function ensurePatient(tx: Tx, by: Recording, patient: NewPatient): Promise<number> {
  await ensurePatients(tx, by, [patient]);
  const { identifier } = patient;
  const row = await tx.db.patient.findUniqueOrThrow({
    where: { facilityId_identifier: { facilityId: by.facilityId, identifier } },
    select: { id: true },
  });
  return row.id;
}

/** Fills in a patient's birth day and sex where nothing was known. */
export async function completePatient(
  tx: Tx,
  id: number,
  known: { birthDay: DayNumber | null; sex: string | null },
): Promise<void> {
  const { birthDay, sex } = known;
  if (birthDay !== null) await tx.db.patient.updateMany({ where: { id, birthDay: null }, data: { birthDay } });
  if (sex !== null) await tx.db.patient.updateMany({ where: { id, sex: null }, data: { sex } });
}

/** For each of these identifiers that was merged into another record: the identifier of the surviving one. */
export async function survivorsOf(
  read: Read,
  facilityId: number,
  identifiers: readonly string[],
): Promise<Map<string, string>> {
  const merged = [...(await patientsByIdentifier(read, facilityId, identifiers)).values()].filter(
    (patient) => patient.survivorId !== patient.id,
  );
  const survivors = await inChunks([...new Set(merged.map((patient) => patient.survivorId))], (chunk) =>
    read.db.patient.findMany({ where: { id: { in: chunk } }, select: { id: true, identifier: true } }),
  );
  const identifierOf = new Map(survivors.map((survivor) => [survivor.id, survivor.identifier]));
  return new Map(
    merged.map((patient) => [patient.identifier, identifierOf.get(patient.survivorId) ?? patient.identifier]),
  );
}

/** The surviving record of each of these patients, by the patient's own id. */
export async function survivorIdsOf(read: Read, ids: readonly number[]): Promise<Map<number, number>> {
  const rows = await inChunks(ids, (chunk) =>
    read.db.patient.findMany({ where: { id: { in: chunk } }, select: { id: true, survivorId: true } }),
  );
  return new Map(rows.map(({ id, survivorId }) => [id, survivorId]));
}
