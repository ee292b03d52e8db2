import { createHash } from "node:crypto";
import { updateRows } from "./bulk.ts";
import type { Read, Tx } from "./store.ts";

/** The last link of the chain of sealed entries, or any other: its number and the hash up to it. */
export interface Seal {
  readonly number: number;
  readonly hash: string;
}

/** An entry of the audit trail with everything that its seal covers. */
export interface SealedPart {
  readonly id: string;
  readonly at: Date;
  readonly facilityId: number | null;
  readonly personId: number;
  readonly action: string;
  readonly details: string;
  readonly patientIds: readonly number[];
}

/** The hash of an entry as the next link after `before`; null before the first. SHA-256, in hexadecimal. */
export function sealHash(before: Seal | null, entry: SealedPart): string {
  const { id, at, facilityId, personId, action, details } = entry;
  const patientIds = [...entry.patientIds].sort((a, b) => a - b);
  const link = [(before?.number ?? 0) + 1, before?.hash ?? ""];
  const text = JSON.stringify([...link, id, at.toISOString(), facilityId, personId, action, details, patientIds]);
  return createHash("sha256").update(text).digest("hex");
}

/** The last link; null while nothing is sealed. */
export async function lastSeal(read: Read): Promise<Seal | null> {
  const row = await read.db.auditEntry.findFirst({
    where: { sealNumber: { not: null } },
    orderBy: { sealNumber: "desc" },
    select: { sealNumber: true, sealHash: true },
  });
  return row && { number: row.sealNumber ?? 0, hash: row.sealHash ?? "" };
}

const parts = {
  id: true,
  at: true,
  facilityId: true,
  personId: true,
  action: true,
  details: true,
  patients: { select: { patientId: true } },
} as const;

interface PartRow extends Omit<SealedPart, "patientIds"> {
  readonly patients: readonly { readonly patientId: number }[];
}

function partFrom({ patients, ...entry }: PartRow): SealedPart {
  return { ...entry, patientIds: patients.map(({ patientId }) => patientId) };
}

/** The entries that wait to be sealed, in the order of their ids, which is about that of time. */
export async function waitingEntries(read: Read, limit: number): Promise<SealedPart[]> {
  const rows = await read.db.auditEntry.findMany({
    where: { sealNumber: null },
    orderBy: { id: "asc" },
    take: limit,
    select: parts,
  });
  return rows.map(partFrom);
}

/** How many entries wait. */
export function countWaiting(read: Read): Promise<number> {
  return read.db.auditEntry.count({ where: { sealNumber: null } });
}

/** Sealed entries after a number, in the order of the chain, each with its seal. */
export async function sealedEntries(
  read: Read,
  after: number,
  limit: number,
): Promise<(SealedPart & { readonly seal: Seal })[]> {
  const rows = await read.db.auditEntry.findMany({
    where: { sealNumber: { gt: after } },
    orderBy: { sealNumber: "asc" },
    take: limit,
    select: { ...parts, sealNumber: true, sealHash: true },
  });
  return rows.map(({ sealNumber, sealHash: hash, ...row }) => ({
    ...partFrom(row),
    seal: { number: sealNumber ?? 0, hash: hash ?? "" },
  }));
}

const table = { table: "audit_entry", columns: { id: "text", seal_number: "int", seal_hash: "text" } } as const;

/** Writes the seals of entries. A number that somebody else gave meanwhile fails the transaction. */
export async function storeSeals(tx: Tx, seals: readonly (Seal & { readonly id: string })[]): Promise<void> {
  await updateRows(
    tx,
    table,
    seals.map(({ id, number, hash }) => [id, number, hash]),
  );
}
