import { refuse } from "../../shared/problems.ts";
import type { Instant } from "../domain/days/day-number.ts";
import { keepVersions } from "./entry-versions.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";

/** What a source calls a ward. */
export interface AliasRow {
  readonly id: number;
  readonly sourceId: number;
  /** As the files of the source write it. */
  readonly code: string;
  readonly wardId: number;
  readonly version: number;
  readonly recordedAt: Instant;
  readonly recordedBy: number;
}

const columns = {
  ...{ id: true, sourceId: true, code: true, wardId: true, version: true, recordedAt: true, recordedBy: true },
} as const;

/** The aliases of a facility's sources, or of one of them, by code. */
export async function aliasesOf(read: Read, facilityId: number, sourceId?: number): Promise<AliasRow[]> {
  const where = { voidKey: 0, source: { facilityId }, ...(sourceId === undefined ? {} : { sourceId }) };
  const rows = await read.db.wardAlias.findMany({ where, select: columns, orderBy: { code: "asc" } });
  return rows.map((row) => ({ ...row, recordedAt: row.recordedAt.getTime() }));
}

/** A further alias of a source. */
export async function addAlias(
  tx: Tx,
  by: Recording,
  alias: Pick<AliasRow, "sourceId" | "code" | "wardId">,
): Promise<void> {
  const recorded = { recordedAt: new Date(by.now), recordedBy: by.personId };
  await tx.db.wardAlias.create({ data: { id: tx.newId(), ...alias, ...recorded } });
}

/** An alias of a source. Refuses `not-found`. */
export async function aliasOf(
  read: Read,
  facilityId: number,
  { sourceId, aliasId }: { readonly sourceId: number; readonly aliasId: number },
): Promise<AliasRow> {
  const found = (await aliasesOf(read, facilityId, sourceId)).find(({ id }) => id === aliasId);
  return found ?? refuse("not-found", "There is no such alias of this import source.");
}

/** Removes an alias; what it was is kept with the reason. */
export async function voidAlias(tx: Tx, by: Recording & { reason: string }, alias: AliasRow): Promise<void> {
  await keepVersions(tx, by, [{ kind: "ward-alias", id: alias.id, version: alias.version, body: alias }]);
  const recorded = { recordedAt: new Date(by.now), recordedBy: by.personId };
  await tx.db.wardAlias.update({
    where: { id: alias.id },
    data: { voidKey: alias.id, voidReason: by.reason, version: { increment: 1 }, ...recorded },
  });
}

/** Lets the aliases of a ward mean another one; what they were is kept. */
export async function repointAliases(
  tx: Tx,
  by: Recording & { reason: string },
  { fromId, intoId }: { readonly fromId: number; readonly intoId: number },
): Promise<void> {
  const old = (await aliasesOf(tx, by.facilityId)).filter(({ wardId }) => wardId === fromId);
  const bodies = old.map((body) => ({ kind: "ward-alias", id: body.id, version: body.version, body }));
  await keepVersions(tx, by, bodies);
  const where = { wardId: fromId, voidKey: 0 };
  await tx.db.wardAlias.updateMany({ where, data: { wardId: intoId, version: { increment: 1 } } });
}
