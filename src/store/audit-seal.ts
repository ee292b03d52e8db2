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

/** Entries chosen by a condition on `seal_number`, with their patients, as one JSON text: an entry can name hundreds. */
async function entriesWhere(
  read: Read,
  { where, order, limit }: { where: string; order: string; limit: number },
): Promise<(SealedPart & { readonly seal: Seal })[]> {
  const sqlite = read.kind === "sqlite";
  const at = sqlite ? "a.at" : "(extract(epoch FROM a.at) * 1000)::bigint";
  const [array, list] = sqlite ? ["json_array", "json_group_array"] : ["json_build_array", "json_agg"];
  const patients = `(SELECT ${list}(p.patient_id) FROM audit_patient p WHERE p.audit_id = a.id)`;
  const cells = `a.id, ${at}, a.facility_id, a.person_id, a.action, a.details, a.seal_number, a.seal_hash, ${patients}`;
  const [found] = await read.sql.rows<{ list: string | null }>(
    `SELECT ${sqlite ? `${list}(${array}(${cells}))` : `${list}(${array}(${cells}))::text`} AS list
     FROM (SELECT * FROM audit_entry WHERE ${where} ORDER BY ${order} LIMIT ${limit}) a`,
  );
  return (JSON.parse(found?.list ?? "[]") as EntryCells[]).map(entryFrom);
}

type EntryCells = readonly [
  ...[id: string, at: number, facilityId: number | null, personId: number, action: string, details: string],
  ...[sealNumber: number | null, sealHash: string | null, patientIds: number[] | null],
];

function entryFrom(cells: EntryCells): SealedPart & { readonly seal: Seal } {
  const [id, at, facilityId, personId, action, details, number, hash, patientIds] = cells;
  const said = { id, at: new Date(at), facilityId, personId, action, details, patientIds: patientIds ?? [] };
  return { ...said, seal: { number: number ?? 0, hash: hash ?? "" } };
}

/** The entries that wait to be sealed, in the order of their ids, which is about that of time. */
export async function waitingEntries(read: Read, limit: number): Promise<SealedPart[]> {
  const entries = await entriesWhere(read, { where: "seal_number IS NULL", order: "id", limit });
  return entries.sort((a, b) => (a.id < b.id ? -1 : 1));
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
  const where = `seal_number > ${Math.trunc(after)}`;
  const entries = await entriesWhere(read, { where, order: "seal_number", limit });
  return entries.sort((a, b) => a.seal.number - b.seal.number);
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
