import type { Instant } from "../domain/days/day-number.ts";
import type { Prisma } from "./generated/sqlite/client.ts";
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
  const rows = await read.db.auditEntry.findMany({
    where: whereOf(question),
    orderBy: [{ at: "desc" }, { id: "desc" }],
    take: question.limit,
    include: { patients: { select: { patientId: true } } },
  });
  const ids = [...new Set(rows.map((row) => row.personId))];
  const people = await read.db.person.findMany({ where: { id: { in: ids } }, select: { id: true, name: true } });
  const names = new Map(people.map(({ id, name }) => [id, name]));
  return rows.map(({ id, at, personId, action, details, patients, sealNumber }) => ({
    ...{ id, personId, action, sealNumber },
    at: at.getTime(),
    personName: names.get(personId) ?? "",
    details: JSON.parse(details) as Record<string, unknown>,
    patientIds: patients.map(({ patientId }) => patientId).sort((a, b) => a - b),
  }));
}

function whereOf({
  facilityId,
  personId,
  survivorId,
  action,
  from,
  to,
  after,
}: AuditQuestion): Prisma.AuditEntryWhereInput {
  const before = after && new Date(after.at);
  return {
    facilityId,
    ...(personId === undefined ? {} : { personId }),
    ...(action === undefined ? {} : { action }),
    ...(survivorId === undefined ? {} : { patients: { some: { patient: { survivorId } } } }),
    at: { ...(from === undefined ? {} : { gte: new Date(from) }), ...(to === undefined ? {} : { lt: new Date(to) }) },
    ...(before ? { OR: [{ at: { lt: before } }, { at: before, id: { lt: after.id } }] } : {}),
  };
}
