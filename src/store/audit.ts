import type { AuditAction } from "../../shared/audit-words.ts";
import { insertRows } from "./bulk.ts";
import type { Recording } from "./patients.ts";
import type { Tx } from "./store.ts";

export interface Audit {
  readonly action: AuditAction;
  readonly patientIds?: readonly number[];
  /** Ids, versions and the reason. Never what a patient could be known by. */
  readonly details: object;
}

const entryTable = {
  table: "audit_entry",
  columns: { id: "text", at: "instant", facility_id: "int", person_id: "int", action: "text", details: "text" },
} as const;

/** Whom an entry is about; an import names hundreds at once. */
const patientTable = { table: "audit_patient", columns: { audit_id: "text", patient_id: "int" } } as const;

/** An entry of the trail with whoever did it. */
export interface AuditBy extends Audit {
  readonly by: Recording;
}

/** Writes who did what, in the transaction of the act itself. */
export async function writeAudit(tx: Tx, by: Recording, audit: Audit): Promise<void> {
  tx.trace.act = { by, ...audit };
  await writeAudits(tx, [{ by, ...audit }]);
}

/** Writes who saw what: entries that change nothing and so need not be traced. */
export async function writeAudits(tx: Tx, entries: readonly AuditBy[]): Promise<void> {
  const written = entries.map((entry) => ({ ...entry, id: tx.newAuditId(entry.by.now) }));
  await insertRows(
    tx,
    entryTable,
    written.map(({ id, by, action, details }) => [
      ...[id, by.now, by.facilityId, by.personId],
      ...[action, JSON.stringify(details)],
    ]),
  );
  const patients = written.flatMap(({ id, patientIds = [] }) => [...new Set(patientIds)].map((one) => [id, one]));
  await insertRows(tx, patientTable, patients);
}
