import type { InsertionRecord, RemovalRecord } from "../../shared/records.ts";
import type { CatheterKind } from "../../shared/vocabulary.ts";
import type { Instant } from "../domain/days/day-number.ts";
import type { Catheter, Mark, PatientTimeline, Stay, WardStay } from "../domain/timeline/timeline.ts";
import type {
  Catheter as CatheterModel,
  Prisma,
  Stay as StayModel,
  WardStay as WardStayModel,
} from "./generated/sqlite/client.ts";
import { inChunks } from "./in-chunks.ts";
import { stayIds } from "./stay-ids.ts";
import type { Read } from "./store.ts";

/** Everything recorded about a patient, over all stays, with those of the patients merged into it. */
export async function loadTimeline(read: Read, survivorId: number): Promise<PatientTimeline> {
  const timelines = await loadTimelines(read, [survivorId]);
  return timelines.get(survivorId) ?? { patientId: survivorId, stays: [] };
}

/** Timelines of many surviving patients, by patient. A patient without stays has an empty one. */
export async function loadTimelines(read: Read, survivorIds: readonly number[]): Promise<Map<number, PatientTimeline>> {
  const owned = await inChunks(survivorIds, (ids) => ownedStays(read, { patient: { survivorId: { in: ids } } }));
  const stays = new Map<number, Stay[]>(survivorIds.map((id) => [id, []]));
  for (const { survivorId, stay } of owned) stays.get(survivorId)?.push(stay);
  return new Map([...stays].map(([patientId, list]) => [patientId, { patientId, stays: list }]));
}

/** A stay with the surviving patient whose days it makes. */
export interface OwnedStay {
  readonly survivorId: number;
  readonly identifier: string;
  readonly stay: Stay;
}

/**
 * The stays that had begun by then and have not ended: what a report counts beside the ledger. Only those that were on
 * one of `wardIds` when given.
 */
export async function openStays(
  read: Read,
  facilityId: number,
  { until, wardIds }: { until: Instant; wardIds?: readonly number[] | undefined },
): Promise<OwnedStay[]> {
  const ids = await stayIds(read, { facilityId, admittedBefore: until + 1, endedFrom: null, wardIds });
  return staysOf(read, ids);
}

/** The stays that touch a stretch of time. Only those that were on one of `wardIds` when given. */
export async function staysBetween(
  read: Read,
  facilityId: number,
  { start, end, wardIds }: { start: Instant; end: Instant; wardIds?: readonly number[] | undefined },
): Promise<OwnedStay[]> {
  return staysOf(read, await stayIds(read, { facilityId, admittedBefore: end, endedFrom: start, wardIds }));
}

/** The stays that a condition chooses, with everything in them. */
export async function staysWith(read: Read, where: Prisma.StayWhereInput): Promise<Stay[]> {
  return (await ownedStays(read, where)).map(({ stay }) => stay);
}

function staysOf(read: Read, ids: readonly number[]): Promise<OwnedStay[]> {
  return inChunks(ids, (chunk) => ownedStays(read, { id: { in: chunk } }));
}

/**
 * Stays with their entries. One query after another: a transaction has one connection, and queries that Prisma would
 * send side by side for nested reads only wait for each other there.
 */
async function ownedStays(read: Read, where: Prisma.StayWhereInput): Promise<OwnedStay[]> {
  const stays = await read.db.stay.findMany({ where, orderBy: { id: "asc" } });
  if (stays.length === 0) return [];
  const ids = stays.map((row) => row.id);
  const wardStays = await inChunks(ids, (chunk) =>
    read.db.wardStay.findMany({ where: { stayId: { in: chunk } }, orderBy: { id: "asc" } }),
  );
  const catheters = await inChunks(ids, (chunk) =>
    read.db.catheter.findMany({ where: { stayId: { in: chunk } }, orderBy: { id: "asc" } }),
  );
  const notedOf = await notedBetween(
    read,
    catheters.map((row) => row.id),
  );
  const patients = await inChunks([...new Set(stays.map((row) => row.patientId))], (chunk) =>
    read.db.patient.findMany({
      where: { id: { in: chunk } },
      select: { id: true, survivorId: true, survivor: { select: { identifier: true } } },
    }),
  );
  const wardStaysOf = byStay(wardStays);
  const cathetersOf = byStay(catheters);
  const patientOf = new Map(patients.map((patient) => [patient.id, patient]));
  return stays.flatMap((row) => {
    const patient = patientOf.get(row.patientId);
    if (!patient) return [];
    const own = (cathetersOf.get(row.id) ?? []).map((c) => catheterFrom(c, notedOf.get(c.id) ?? null));
    const stay = stayFrom(row, wardStaysOf.get(row.id) ?? [], own);
    return [{ survivorId: patient.survivorId, identifier: patient.survivor.identifier, stay }];
  });
}

function byStay<T extends { stayId: number }>(rows: readonly T[]): Map<number, T[]> {
  const lists = new Map<number, T[]>();
  for (const row of rows) {
    const list = lists.get(row.stayId);
    if (list) list.push(row);
    else lists.set(row.stayId, [row]);
  }
  return lists;
}

/** When the first and the last standing note about each of these catheters happened. */
async function notedBetween(
  read: Read,
  catheterIds: readonly number[],
): Promise<Map<number, { first: Instant; last: Instant }>> {
  const rows = await inChunks(catheterIds, (chunk) =>
    read.db.catheterNote.groupBy({
      by: ["catheterId"],
      where: { catheterId: { in: chunk }, voidKey: 0 },
      _min: { at: true },
      _max: { at: true },
    }),
  );
  return new Map(
    rows.flatMap(({ catheterId, _min, _max }) =>
      _min.at && _max.at ? [[catheterId, { first: _min.at.getTime(), last: _max.at.getTime() }]] : [],
    ),
  );
}

function stayFrom(row: StayModel, wardStays: readonly WardStayModel[], catheters: readonly Catheter[]): Stay {
  return {
    ...entryFrom(row),
    patientId: row.patientId,
    number: row.number,
    admittedAt: row.admittedAt.getTime(),
    dischargedAt: instant(row.dischargedAt),
    disposition: row.disposition,
    spanFromMoves: row.spanFromMoves,
    wardStays: wardStays.map(wardStayFrom),
    catheters,
  };
}

function wardStayFrom(row: WardStayModel): WardStay {
  return {
    ...entryFrom(row),
    wardId: row.wardId,
    bed: row.bed,
    startAt: row.startAt.getTime(),
    endAt: instant(row.endAt),
    absenceAfter: row.absenceAfter as WardStay["absenceAfter"],
  };
}

function catheterFrom(row: CatheterModel, noted: (Catheter["noted"] & object) | null): Catheter {
  return {
    ...entryFrom(row),
    number: row.number,
    kind: row.kind as CatheterKind,
    insertedAt: instant(row.insertedAt),
    inPlaceOnArrival: row.inPlaceOnArrival,
    removedAt: instant(row.removedAt),
    removedAfterAt: instant(row.removedAfterAt),
    removedBeforeAt: instant(row.removedBeforeAt),
    lastSeenAt: instant(row.lastSeenAt),
    indication: row.indication,
    sizeFr: row.sizeFr,
    balloonMl: row.balloonMl,
    insertionRecord: record<InsertionRecord>(row.insertionRecord),
    removalRecord: record<RemovalRecord>(row.removalRecord),
    noted,
  };
}

function record<T>(text: string | null): T | null {
  return text === null ? null : (JSON.parse(text) as T);
}

function entryFrom(row: { id: number; version: number; voidReason: string | null; marks: string }) {
  const marks = row.marks === "" ? [] : (row.marks.split(" ") as Mark[]);
  return { id: row.id, version: row.version, voidReason: row.voidReason, marks };
}

function instant(date: Date | null): Instant | null {
  return date === null ? null : date.getTime();
}
