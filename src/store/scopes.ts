import type { Month } from "../../shared/day.ts";
import { refuse } from "../../shared/problems.ts";
import type { Instant } from "../domain/days/day-number.ts";
import { keepVersions } from "./entry-versions.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";
import { daysOfMonths, touchDays } from "./trace.ts";

export interface ScopeRow {
  readonly id: number;
  readonly wardId: number;
  readonly fromMonth: Month;
  readonly toMonth: Month | null;
  readonly edition: string;
  readonly version: number;
}

const columns = { id: true, wardId: true, fromMonth: true, toMonth: true, edition: true, version: true } as const;

/** The scopes of a ward that stand, in the order of months. */
export async function scopesOfWard(read: Read, wardId: number): Promise<ScopeRow[]> {
  const where = { wardId, voidKey: 0 };
  return (await read.db.scope.findMany({ where, select: columns, orderBy: { fromMonth: "asc" } })) as ScopeRow[];
}

/** A scope with who recorded it. */
export interface RecordedScope extends ScopeRow {
  readonly recordedAt: Instant;
  readonly recordedBy: number;
}

/** The scopes of a facility that stand, by the wards' codes and in the order of months; only of `wardIds` when given. */
export async function scopesOfFacility(
  read: Read,
  facilityId: number,
  wardIds?: readonly number[],
): Promise<RecordedScope[]> {
  const rows = await read.db.scope.findMany({
    where: { voidKey: 0, ward: { facilityId }, ...(wardIds ? { wardId: { in: [...wardIds] } } : {}) },
    select: { ...columns, recordedAt: true, recordedBy: true },
    orderBy: [{ ward: { code: "asc" } }, { fromMonth: "asc" }],
  });
  return rows.map((row) => ({ ...(row as typeof row & ScopeRow), recordedAt: row.recordedAt.getTime() }));
}

/** A ward's scope that stands. Refuses `not-found`. */
export async function scopeOf(
  read: Read,
  facilityId: number,
  { wardId, scopeId }: { readonly wardId: number; readonly scopeId: number },
): Promise<ScopeRow> {
  const where = { id: scopeId, wardId, voidKey: 0, ward: { facilityId } };
  const row = await read.db.scope.findFirst({ where, select: columns });
  return (row as ScopeRow | null) ?? refuse("not-found", "There is no such surveillance of this unit.");
}

/** A new scope; returns its id. */
export async function addScope(tx: Tx, by: Recording, scope: Omit<ScopeRow, "id" | "version">): Promise<number> {
  const id = tx.newId();
  touchDays(tx, daysOfMonths({ from: scope.fromMonth, to: scope.toMonth }));
  await tx.db.scope.create({ data: { id, ...scope, recordedAt: new Date(by.now), recordedBy: by.personId } });
  return id;
}

/** Changes the end of a scope or voids it; what it said before is kept. */
export async function changeScope(
  tx: Tx,
  by: Recording & { reason: string },
  scope: ScopeRow,
  change: { toMonth: Month | null } | { voidReason: string },
): Promise<void> {
  touchDays(tx, daysOfMonths(monthsChanged(scope, change)));
  await keepVersions(tx, by, [{ kind: "scope", id: scope.id, version: scope.version, body: scope }]);
  const voided = "voidReason" in change ? { voidKey: scope.id } : {};
  const recorded = { recordedAt: new Date(by.now), recordedBy: by.personId };
  await tx.db.scope.update({
    where: { id: scope.id },
    data: { ...change, ...voided, ...recorded, version: { increment: 1 } },
  });
}

/** From the earlier to the later end, or all of a scope that is voided. */
function monthsChanged(
  { fromMonth, toMonth }: ScopeRow,
  change: { toMonth: Month | null } | { voidReason: string },
): { from: Month; to: Month | null } {
  if ("voidReason" in change) return { from: fromMonth, to: toMonth };
  const [first = fromMonth, last] = [toMonth, change.toMonth].filter((end) => end !== null).sort();
  return { from: first, to: last ?? null };
}
