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
  const data = entries.map(({ by, action, details }) => ({
    ...{ at: new Date(by.now), facilityId: by.facilityId, personId: by.personId },
    ...{ action, details: JSON.stringify(details) },
  }));
  const written = await tx.db.auditEntry.createManyAndReturn({ data, select: { id: true, details: true } });
  const rows = entries.flatMap(({ patientIds = [] }, i) => {
    const entry = written[i];
    // Databases answer in the order of the insert, and promise it nowhere.
    if (entry?.details !== data[i]?.details || !entry) throw new Error("entries of the audit trail changed places");
    return [...new Set(patientIds)].map((patientId) => [entry.id, patientId]);
  });
  await insertRows(tx, patientTable, rows);
}
