import type { Month } from "../../shared/day.ts";
import { refuse } from "../../shared/problems.ts";
import type { Instant } from "../domain/days/day-number.ts";
import { monthDays } from "../domain/days/month.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";
import { touchDays } from "./trace.ts";

/** Somebody confirmed that a ward had no event in a month. */
export interface NoneFoundRow {
  readonly id: number;
  readonly wardId: number;
  readonly month: Month;
  readonly version: number;
  readonly recordedAt: Instant;
  readonly recordedBy: number;
}

/** Those that stand for a month, of all wards of a facility. */
export async function noneFoundIn(read: Read, facilityId: number, month: Month): Promise<NoneFoundRow[]> {
  const where = { month, voidKey: 0, ward: { facilityId } };
  return (await read.db.noneFound.findMany({ where, orderBy: { wardId: "asc" } })).map(rowFrom);
}

/** The one of that number. Refuses `not-found`, also when it does not stand any more. */
export async function noneFoundOf(
  read: Read,
  facilityId: number,
  { wardId, noneFoundId }: { readonly wardId: number; readonly noneFoundId: number },
): Promise<NoneFoundRow> {
  const where = { id: noneFoundId, wardId, voidKey: 0, ward: { facilityId } };
  const row = await read.db.noneFound.findFirst({ where });
  return row ? rowFrom(row) : refuse("not-found", "There is no such confirmation of this unit.");
}

type Row = Awaited<ReturnType<Read["db"]["noneFound"]["findFirstOrThrow"]>>;

function rowFrom({ id, wardId, month, version, recordedAt, recordedBy }: Row): NoneFoundRow {
  return { id, wardId, month: month as Month, version, recordedAt: recordedAt.getTime(), recordedBy };
}

/** A new one; returns its id. */
export async function addNoneFound(
  tx: Tx,
  by: Recording,
  about: Pick<NoneFoundRow, "wardId" | "month">,
): Promise<number> {
  const id = tx.newId();
  touchDays(tx, monthDays(about.month));
  await tx.db.noneFound.create({ data: { id, ...about, recordedAt: new Date(by.now), recordedBy: by.personId } });
  return id;
}

/** Voids one, with the reason kept on it. */
export async function voidNoneFound(tx: Tx, { id, version, month }: NoneFoundRow, voidReason: string): Promise<void> {
  touchDays(tx, monthDays(month));
  await tx.db.noneFound.update({ where: { id }, data: { voidKey: id, voidReason, version: version + 1 } });
}
