import type { WardSetting } from "../../shared/vocabulary.ts";
import type { DayNumber, Instant } from "../domain/days/day-number.ts";
import { idList } from "./bulk.ts";
import { rowsOf } from "./columns.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";
import { touchDays } from "./trace.ts";

/** What a ward is from a day on. */
export interface WardSettingRow {
  readonly id: number;
  readonly fromDay: DayNumber;
  readonly name: string;
  readonly type: string | null;
  readonly setting: WardSetting | null;
  readonly beds: number | null;
  /** Somebody said so here; otherwise a file did, or the ward was only named. */
  readonly byHand: boolean;
  readonly version: number;
}

export interface WardRow {
  readonly id: number;
  readonly code: string;
  readonly openedDay: DayNumber | null;
  readonly closedDay: DayNumber | null;
  readonly namedOnly: boolean;
  readonly version: number;
  /** In the order of days. */
  readonly settings: readonly WardSettingRow[];
}

const wardTable = {
  table: "ward",
  columns: { id: "int", code: "text", openedDay: "int?", closedDay: "int?", namedOnly: "bool", version: "int" },
} as const;
const settingTable = {
  table: "ward_setting",
  columns: {
    id: "int",
    wardId: "int",
    fromDay: "int",
    name: "text",
    type: "text?",
    setting: "text?",
    beds: "int?",
    byHand: "bool",
    version: "int",
  },
} as const;

/** Wards that were neither merged into another one nor entered in error. */
const standing = "facility_id = $1 AND void_key = 0 AND merged_into_id IS NULL";

/** The wards of a facility with their dated settings, by code; only those of `ids` when given. */
export async function wards(read: Read, facilityId: number, ids?: readonly number[]): Promise<WardRow[]> {
  const chosen = ids ? ` AND id IN ${idList(read, 2)}` : "";
  const values = [facilityId, ...(ids ? [JSON.stringify(ids)] : [])];
  const rows = await rowsOf(read, wardTable, `WHERE ${standing}${chosen}`, ...values);
  const settings = new Map<number, WardSettingRow[]>(rows.map(({ id }) => [id, []]));
  const ofThese = `WHERE ward_id IN (SELECT id FROM ward WHERE ${standing}${chosen}) ORDER BY from_day`;
  for (const { wardId, setting, ...row } of await rowsOf(read, settingTable, ofThese, ...values))
    settings.get(wardId)?.push({ ...row, setting: setting as WardSetting | null });
  return rows
    .map((row) => ({ ...row, settings: settings.get(row.id) ?? [] }))
    .sort((a, b) => (a.code < b.code ? -1 : 1));
}

/** The codes of wards that were merged, each with the code of the ward that it is now. */
export async function mergedCodes(read: Read, facilityId: number): Promise<(readonly [string, string])[]> {
  const where = { facilityId, mergedIntoId: { not: null } };
  const rows = await read.db.ward.findMany({ where, select: { id: true, code: true, mergedIntoId: true } });
  if (rows.length === 0) return [];
  const next = new Map(rows.map(({ id, mergedIntoId }) => [id, mergedIntoId ?? id]));
  const last = (id: number): number => {
    const into = next.get(id);
    return into === undefined ? id : last(into);
  };
  const codes = await wardCodes(read, facilityId);
  return rows.map(({ id, code }) => [code, codes.get(last(id)) ?? code]);
}

/** The codes of a facility's wards by id, also of those that were merged or entered in error. */
export async function wardCodes(read: Read, facilityId: number): Promise<Map<number, string>> {
  const rows = await read.db.ward.findMany({ where: { facilityId }, select: { id: true, code: true } });
  return new Map(rows.map(({ id, code }) => [id, code]));
}

/**
 * The codes by which files name these wards, those of wards merged into them included, and the codes that any ward has.
 */
export async function codesWithin(
  read: Read,
  facilityId: number,
  wardIds: readonly number[],
): Promise<{ own: ReadonlySet<string>; known: ReadonlySet<string> }> {
  const codes = await wardCodes(read, facilityId);
  const now = wardIds.flatMap((wardId) => codes.get(wardId) ?? []);
  const merged = (await mergedCodes(read, facilityId)).filter(([, into]) => now.includes(into));
  return { own: new Set([...now, ...merged.map(([code]) => code)]), known: new Set(codes.values()) };
}

export interface NewWard {
  readonly code: string;
  readonly openedDay?: DayNumber | null;
  readonly closedDay?: DayNumber | null;
  readonly namedOnly: boolean;
}

/** A new ward without a setting yet; returns its id. */
export async function addWard(tx: Tx, by: Recording, ward: NewWard): Promise<number> {
  const id = tx.newId();
  const { facilityId, personId } = by;
  await tx.db.ward.create({ data: { id, facilityId, ...ward, recordedAt: new Date(by.now), recordedBy: personId } });
  return id;
}

/** Changes what is not dated about a ward. */
export async function updateWard(tx: Tx, by: Recording, id: number, changes: Partial<NewWard>): Promise<void> {
  const recorded = { recordedAt: new Date(by.now), recordedBy: by.personId };
  await tx.db.ward.update({ where: { id }, data: { ...changes, version: { increment: 1 }, ...recorded } });
}

export type WardDescription = Omit<WardSettingRow, "id" | "version" | "byHand">;

/** What a ward is from a day on; replaces what was said for that very day. With `byHand` it is what somebody said here. */
export async function putWardSetting(
  tx: Tx,
  by: Recording & { reason?: string },
  wardId: number,
  { byHand = false, ...said }: WardDescription & { byHand?: boolean },
): Promise<void> {
  const { _min } = await tx.db.wardSetting.aggregate({
    where: { wardId, fromDay: { gt: said.fromDay } },
    _min: { fromDay: true },
  });
  touchDays(tx, { first: said.fromDay, last: _min.fromDay });
  const recorded = { reason: by.reason ?? null, recordedAt: new Date(by.now), recordedBy: by.personId };
  const cells = { ...said, byHand, ...recorded };
  await tx.db.wardSetting.upsert({
    where: { wardId_fromDay: { wardId, fromDay: said.fromDay } },
    create: { id: tx.newId(), wardId, ...cells },
    update: { ...cells, version: { increment: 1 } },
  });
}

/** What was said of a ward from a day on, with who said it. */
export interface RecordedSetting extends WardSettingRow {
  readonly reason: string | null;
  readonly recordedAt: Instant;
  readonly recordedBy: number;
}

/** Everything that holds of a ward, in the order of days. */
export async function recordedSettings(read: Read, wardId: number): Promise<RecordedSetting[]> {
  const rows = await read.db.wardSetting.findMany({ where: { wardId }, orderBy: { fromDay: "asc" } });
  return rows.map(({ wardId: _, recordedAt, setting, ...row }) => ({
    ...row,
    setting: setting as WardSetting | null,
    recordedAt: recordedAt.getTime(),
  }));
}

/** How many stays on a ward reach beyond an instant before `now`; one that has not ended reaches up to now. */
export function staysAfter(
  read: Read,
  wardId: number,
  { after, now }: Record<"after" | "now", Instant>,
): Promise<number> {
  const open = after < now ? [{ endAt: null }] : [];
  return read.db.wardStay.count({
    where: { wardId, voidKey: 0, stay: { voidKey: 0 }, OR: [{ endAt: { gt: new Date(after) } }, ...open] },
  });
}

/** Surviving patients who were ever on that ward. */
export async function patientsOfWard(read: Read, wardId: number): Promise<number[]> {
  const rows = await read.db.patient.findMany({
    where: { stays: { some: { wardStays: { some: { wardId } } } } },
    select: { survivorId: true },
    distinct: ["survivorId"],
    orderBy: { survivorId: "asc" },
  });
  return rows.map((row) => row.survivorId);
}

/** Takes a ward's row for this transaction, so that two counts of one day come one after the other. */
export async function lockWard(tx: Tx, wardId: number): Promise<void> {
  if (tx.kind === "postgresql") await tx.db.$queryRaw`SELECT id FROM ward WHERE id = ${wardId} FOR NO KEY UPDATE`;
}
