import Database from "better-sqlite3";
import pg from "pg";
import type { NoteKind } from "../../shared/catheter-words.ts";
import type { TestDatabase } from "../databases/databases.ts";
import type { DatedCensus } from "./census-instants.ts";

/** Rows of a facility as the database holds them; instants in ms since 1970, days since 1970-01-01. */
export interface HospitalRecord {
  readonly zone: string;
  readonly census: readonly DatedCensus[];
  readonly wards: readonly { id: number; code: string; mergedIntoId: number | null }[];
  readonly settings: readonly { wardId: number; fromDay: number; setting: string | null }[];
  readonly patients: readonly PatientRecord[];
  readonly merges: readonly { id: number; fromId: number; intoId: number }[];
  readonly stays: readonly StayRecord[];
  readonly wardStays: readonly WardStayRecord[];
  readonly catheters: readonly CatheterRecord[];
  readonly notes: readonly NoteRecord[];
  readonly ledger: readonly LedgerRow[];
}

export interface PatientRecord {
  readonly id: number;
  readonly identifier: string;
  readonly survivorId: number;
}

export interface StayRecord {
  readonly id: number;
  readonly patientId: number;
  readonly admittedAt: number;
  readonly dischargedAt: number | null;
  readonly version: number;
  readonly voidKey: number;
}

export interface WardStayRecord {
  readonly id: number;
  readonly stayId: number;
  readonly wardId: number;
  readonly startAt: number;
  readonly endAt: number | null;
  readonly absenceAfter: string | null;
  readonly version: number;
  readonly voidKey: number;
}

export interface CatheterRecord {
  readonly id: number;
  readonly stayId: number;
  readonly kind: string;
  readonly insertedAt: number | null;
  readonly removedAt: number | null;
  readonly removedAfterAt: number | null;
  readonly version: number;
  readonly voidKey: number;
}

export interface NoteRecord {
  readonly id: number;
  readonly catheterId: number;
  readonly kind: NoteKind;
  readonly at: number;
  readonly version: number;
  readonly voidKey: number;
}

export interface LedgerRow {
  readonly patientId: number;
  readonly day: number;
  readonly wardId: number;
  readonly stayId: number;
  readonly catheter: boolean;
}

/** Reads the rows of one facility by SQL, past the store. */
export interface RecordReader {
  read(facilityId: number): Promise<HospitalRecord>;
  /** Runs a statement of the test's own, to plant an error. */
  run(sql: string): Promise<void>;
  close(): Promise<void>;
}

/** Opens a connection of its own to a test's database. */
export async function openReader({ kind, url }: TestDatabase): Promise<RecordReader> {
  if (kind === "sqlite") {
    const db = new Database(url);
    return {
      read: async (facilityId) => recordFrom(queries(facilityId, kind).map((sql) => db.prepare(sql).all())),
      run: async (sql) => void db.exec(sql),
      close: async () => void db.close(),
    };
  }
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  return {
    read: async (facilityId) => {
      // Several statements in one message are answered by one result each, which the driver's types leave out.
      const results = (await client.query(queries(facilityId, kind).join(";"))) as unknown as { rows: unknown[] }[];
      return recordFrom(results.map(({ rows }) => rows));
    },
    run: async (sql) => void (await client.query(sql)),
    close: () => client.end(),
  };
}

function queries(facilityId: number, kind: TestDatabase["kind"]): string[] {
  // SQLite keeps whole milliseconds; PostgreSQL keeps a UTC time without a zone.
  const at = (column: string, name: string) =>
    `${kind === "sqlite" ? column : `(extract(epoch FROM ${column}) * 1000)::float8`} AS "${name}"`;
  const inStay = `JOIN stay s ON s.id = x.stay_id WHERE s.facility_id = ${facilityId} ORDER BY x.id`;
  return [
    `SELECT zone FROM facility WHERE id = ${facilityId}`,
    `SELECT from_day AS "fromDay", time FROM facility_census WHERE facility_id = ${facilityId} ORDER BY from_day`,
    `SELECT id, code, merged_into_id AS "mergedIntoId" FROM ward WHERE facility_id = ${facilityId} ORDER BY id`,
    `SELECT x.ward_id AS "wardId", x.from_day AS "fromDay", x.setting FROM ward_setting x
     JOIN ward w ON w.id = x.ward_id WHERE w.facility_id = ${facilityId} ORDER BY x.ward_id, x.from_day`,
    `SELECT id, identifier, survivor_id AS "survivorId" FROM patient WHERE facility_id = ${facilityId} ORDER BY id`,
    `SELECT m.id, m.from_id AS "fromId", m.into_id AS "intoId" FROM patient_merge m JOIN patient p ON p.id = m.from_id
     WHERE p.facility_id = ${facilityId} AND m.undone_at IS NULL ORDER BY m.id`,
    `SELECT x.id, x.patient_id AS "patientId", ${at("x.admitted_at", "admittedAt")},
     ${at("x.discharged_at", "dischargedAt")}, x.version, x.void_key AS "voidKey"
     FROM stay x WHERE x.facility_id = ${facilityId} ORDER BY x.id`,
    `SELECT x.id, x.stay_id AS "stayId", x.ward_id AS "wardId", ${at("x.start_at", "startAt")},
     ${at("x.end_at", "endAt")}, x.absence_after AS "absenceAfter", x.version, x.void_key AS "voidKey"
     FROM ward_stay x ${inStay}`,
    `SELECT x.id, x.stay_id AS "stayId", x.kind, ${at("x.inserted_at", "insertedAt")},
     ${at("x.removed_at", "removedAt")}, ${at("x.removed_after_at", "removedAfterAt")}, x.version,
     x.void_key AS "voidKey" FROM catheter x ${inStay}`,
    `SELECT n.id, n.catheter_id AS "catheterId", n.kind, ${at("n.at", "at")}, n.version, n.void_key AS "voidKey"
     FROM catheter_note n JOIN catheter x ON x.id = n.catheter_id ${inStay}, n.id`,
    `SELECT x.patient_id AS "patientId", x.day, x.ward_id AS "wardId", x.stay_id AS "stayId", x.catheter
     FROM patient_day x JOIN patient p ON p.id = x.patient_id WHERE p.facility_id = ${facilityId}
     ORDER BY x.patient_id, x.day`,
  ];
}

function recordFrom(tables: readonly unknown[][]): HospitalRecord {
  const [facility, census, wards, settings, patients, merges, stays, wardStays, catheters, notes, ledger] = tables;
  const { zone } = (facility as { zone: string }[])[0] ?? {};
  if (zone === undefined) throw new Error("there is no such facility");
  return {
    zone,
    census: census as HospitalRecord["census"],
    wards: wards as HospitalRecord["wards"],
    settings: settings as HospitalRecord["settings"],
    patients: patients as HospitalRecord["patients"],
    merges: merges as HospitalRecord["merges"],
    stays: stays as HospitalRecord["stays"],
    wardStays: wardStays as HospitalRecord["wardStays"],
    catheters: catheters as HospitalRecord["catheters"],
    notes: notes as HospitalRecord["notes"],
    ledger: (ledger as LedgerRow[]).map((row) => ({ ...row, catheter: Boolean(row.catheter) })),
  };
}
