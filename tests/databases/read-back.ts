import type { Store } from "../../src/store/store.ts";
import { textOf } from "../reference/day-text.ts";

/** The ledger of a patient as text: `2024-03-02 A`, or `2024-03-02 A with catheter`. */
export function ledgerOf(store: Store, patientId: number): Promise<string[]> {
  return store.read(async (read) => {
    const rows = await read.db.patientDay.findMany({
      where: { patientId },
      include: { ward: true },
      orderBy: { day: "asc" },
    });
    return rows.map((row) => `${textOf(row.day)} ${row.ward.code}${row.catheter ? " with catheter" : ""}`);
  });
}

/** An audit entry as a test looks at it. */
export interface AuditSeen {
  readonly at: number;
  readonly personId: number;
  readonly action: string;
  readonly patientIds: readonly number[];
  readonly details: unknown;
}

/** The audit entries of a facility since an instant, in the order of time. */
export function auditOf(store: Store, facilityId: number, since = 0): Promise<AuditSeen[]> {
  return store.read(async (read) => {
    const rows = await read.db.auditEntry.findMany({
      where: { facilityId, at: { gte: new Date(since) } },
      include: { patients: { orderBy: { patientId: "asc" } } },
      orderBy: [{ at: "asc" }, { id: "asc" }],
    });
    return rows.map((row) => ({
      at: row.at.getTime(),
      personId: row.personId,
      action: row.action,
      patientIds: row.patients.map((patient) => patient.patientId),
      details: JSON.parse(row.details),
    }));
  });
}

/** What an entry said before it was changed, oldest first. */
export function versionsOf(store: Store, kind: string, entryId: number) {
  return store.read(async (read) => {
    const rows = await read.db.entryVersion.findMany({ where: { kind, entryId }, orderBy: { version: "asc" } });
    return rows.map(({ version, body, replacedAt, replacedBy, reason }) => ({
      version,
      body: JSON.parse(body) as Record<string, unknown>,
      replacedAt: replacedAt.getTime(),
      replacedBy,
      reason,
    }));
  });
}

const tables = [
  ...["facility", "facility_census", "person", "person_role", "person_ward", "ward", "ward_setting", "patient"],
  ...["patient_merge", "stay", "ward_stay", "catheter", "patient_day", "daily_count", "scope", "entry_version"],
  ...[
    "audit_entry",
    "idempotency_key",
    "catheter_note",
    "policy_version",
    "audit_patient",
    "import",
    "import_source",
    "ward_alias",
    "import_line",
    "import_line_month",
    "import_file",
    "specimen",
    "sign",
    "finding",
    "determination",
    "decision",
    "none_found",
    "signed_month_change",
    "baseline",
    "comparison",
    "signed_month",
    "signed_document",
    "laboratory_word",
    "specimen_wording",
  ],
];

/** Every row of the record, to see that nothing changed. Numbers handed out and not used are no part of it. */
export function everything(store: Store): Promise<Record<string, unknown[]>> {
  return store.read(async (read) => {
    const all: Record<string, unknown[]> = {};
    for (const table of tables) {
      const rows = await read.db.$queryRawUnsafe<unknown[]>(`SELECT * FROM "${table}"`);
      all[table] = rows.map((row) => JSON.stringify(row, (_, v) => (typeof v === "bigint" ? Number(v) : v))).sort();
    }
    return all;
  });
}
