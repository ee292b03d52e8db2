import type { Instant } from "../domain/days/day-number.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";

export interface MergeRow {
  readonly id: number;
  readonly fromId: number;
  readonly intoId: number;
}

/** A merge that stands, or null. */
export async function standingMerge(read: Read, facilityId: number, mergeId: number): Promise<MergeRow | null> {
  return read.db.patientMerge.findFirst({
    where: { id: mergeId, undoneAt: null, from: { facilityId } },
    select: { id: true, fromId: true, intoId: true },
  });
}

/** A merge with the hospital's numbers of both records, and who made it. */
export interface RecordedMerge extends MergeRow {
  readonly fromIdentifier: string;
  readonly intoIdentifier: string;
  readonly mergedAt: Instant;
  readonly mergedBy: number;
}

/** The merges that stand among these records, in the order in which they were made. */
export async function mergesAmong(read: Read, patientIds: readonly number[]): Promise<RecordedMerge[]> {
  const rows = await read.db.patientMerge.findMany({
    where: { undoneAt: null, fromId: { in: [...patientIds] } },
    include: { from: { select: { identifier: true } }, into: { select: { identifier: true } } },
    orderBy: [{ mergedAt: "asc" }, { id: "asc" }],
  });
  return rows.map(({ id, fromId, intoId, from, into, mergedAt, mergedBy }) => ({
    ...{ id, fromId, intoId, mergedBy, fromIdentifier: from.identifier, intoIdentifier: into.identifier },
    mergedAt: mergedAt.getTime(),
  }));
}

/** Records that `fromId` is the same person as `intoId`; returns the id of the merge. */
export async function addMerge(tx: Tx, by: Recording, merge: { fromId: number; intoId: number }): Promise<number> {
  const id = tx.newId();
  await tx.db.patientMerge.create({ data: { id, ...merge, mergedAt: new Date(by.now), mergedBy: by.personId } });
  await tx.db.patient.update({ where: { id: merge.fromId }, data: { mergedIntoId: merge.intoId } });
  return id;
}

/** Records that a merge was an error. */
export async function undoMerge(tx: Tx, by: Recording, merge: MergeRow): Promise<void> {
  await tx.db.patientMerge.update({
    where: { id: merge.id },
    data: { undoneAt: new Date(by.now), undoneBy: by.personId },
  });
  await tx.db.patient.update({ where: { id: merge.fromId }, data: { mergedIntoId: null } });
}

/** The patients merged into this one, directly or through others, and itself. */
export async function mergedGroup(read: Read, patientId: number): Promise<number[]> {
  const group = [patientId];
  for (let i = 0; i < group.length; i++) {
    const into = group[i] as number;
    const rows = await read.db.patient.findMany({ where: { mergedIntoId: into }, select: { id: true } });
    group.push(...rows.map((row) => row.id));
  }
  return group;
}

/** Names the patient whose ledger holds the days of these patients. */
export async function setSurvivor(tx: Tx, patientIds: readonly number[], survivorId: number): Promise<void> {
  await tx.db.patient.updateMany({ where: { id: { in: [...patientIds] } }, data: { survivorId } });
}
