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

/** Writes who did what, in the transaction of the act itself. */
export async function writeAudit(tx: Tx, by: Recording, audit: Audit): Promise<void> {
  tx.trace.act = { by, ...audit };
  const patientIds = [...new Set(audit.patientIds ?? [])];
  const { id } = await tx.db.auditEntry.create({
    data: {
      at: new Date(by.now),
      facilityId: by.facilityId,
      personId: by.personId,
      action: audit.action,
      details: JSON.stringify(audit.details),
    },
    select: { id: true },
  });
  await insertRows(
    tx,
    patientTable,
    patientIds.map((patientId) => [id, patientId]),
  );
}
