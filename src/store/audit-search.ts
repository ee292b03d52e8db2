import type { Instant } from "../domain/days/day-number.ts";
import { unindexed } from "./bulk.ts";
import { parametersFor } from "./parameters.ts";
import { namesOf } from "./people.ts";
import type { Read } from "./store.ts";

/** Which entries are asked for; what is left out does not matter. */
export interface AuditQuestion {
  readonly facilityId: number;
  readonly personId?: number | undefined;
  /** About this surviving patient, or a record that was merged into it. */
  readonly survivorId?: number | undefined;
  readonly action?: string | undefined;
  readonly from?: Instant | undefined;
  /** Left out itself. */
  readonly to?: Instant | undefined;
  /** The last entry of the page before. */
  readonly after?: AuditPlace | undefined;
  readonly limit: number;
}

/** Where a page ends. */
export interface AuditPlace {
  readonly at: Instant;
  readonly id: string;
}

export interface FoundEntry {
  readonly id: string;
  readonly at: Instant;
  readonly personId: number;
  readonly personName: string;
  readonly action: string;
  readonly details: Record<string, unknown>;
  readonly patientIds: readonly number[];
  readonly sealNumber: number | null;
}

/** Entries of the audit trail, newest first. */
export async function findAudit(read: Read, question: AuditQuestion): Promise<FoundEntry[]> {
  const { sql, values } = auditPage(read, question);
  const found = await read.sql.rows<{ id: string }>(sql, ...values);
  const rows = await read.db.auditEntry.findMany({
    where: { id: { in: found.map(({ id }) => id) } },
    orderBy: [{ at: "desc" }, { id: "desc" }],
    include: { patients: { select: { patientId: true } } },
  });
  const ids = [...new Set(rows.map((row) => row.personId))];
  const names = await namesOf(read, ids);
  return rows.map(({ id, at, personId, action, details, patients, sealNumber }) => ({
    ...{ id, personId, action, sealNumber },
    at: at.getTime(),
    personName: names.get(personId) ?? "",
    details: JSON.parse(details) as Record<string, unknown>,
    patientIds: patients.map(({ patientId }) => patientId).sort((a, b) => a - b),
  }));
}

interface Statement {
  readonly sql: string;
  readonly values: readonly (number | string)[];
}

/**
 * The statement that finds the entries of a page. Its own, because Prisma's looks through the whole trail of the
 * facility for the entries about a patient on SQLite, and for the place where a page begins on PostgreSQL.
 */
export function auditPage({ kind }: Pick<Read, "kind">, question: AuditQuestion): Statement {
  const { facilityId, personId, survivorId, action, from, to, after, limit } = question;
  const { values, given, instant } = parametersFor({ kind });
  // The sign keeps SQLite from going through the facility's or the person's entries to look for the patient in each.
  const own = survivorId === undefined ? "" : unindexed({ kind });
  const conditions = [`${own}facility_id = ${given(facilityId, "int")}`];
  if (personId !== undefined) conditions.push(`${own}person_id = ${given(personId, "int")}`);
  if (survivorId !== undefined) conditions.push(`id IN (${aboutPatient} ${given(survivorId, "int")})`);
  if (action !== undefined) conditions.push(`action = ${given(action, "text")}`);
  if (from !== undefined) conditions.push(`at >= ${instant(from)}`);
  if (to !== undefined) conditions.push(`at < ${instant(to)}`);
  // Said twice, since only the first of the two leads an index to the place.
  if (after !== undefined)
    conditions.push(`at <= ${instant(after.at)}`, `(at < ${instant(after.at)} OR id < ${given(after.id, "text")})`);
  const where = conditions.join(" AND ");
  const sql = `SELECT id FROM audit_entry WHERE ${where} ORDER BY at DESC, id DESC LIMIT ${given(limit, "int")}`;
  return { sql, values };
}

const aboutPatient =
  "SELECT ap.audit_id FROM patient p JOIN audit_patient ap ON ap.patient_id = p.id WHERE p.survivor_id =";

/** Whether entries of these actions, about somebody, wait to be sealed. */
export async function isWaiting(read: Read, facilityId: number, actions: readonly string[]): Promise<boolean> {
  const where = { sealNumber: null, facilityId, action: { in: [...actions] }, patients: { some: {} } };
  return (await read.db.auditEntry.findFirst({ where, select: { id: true } })) !== null;
}
