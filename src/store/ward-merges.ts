import type { DayNumber } from "../domain/days/day-number.ts";
import { keepVersions } from "./entry-versions.ts";
import { waitingStates } from "./imports.ts";
import type { Recording } from "./patients.ts";
import type { ScopeRow } from "./scopes.ts";
import type { Read, Tx } from "./store.ts";
import { daysOfMonths, touchDays } from "./trace.ts";

/** Two wards: the one that is merged, and the one that it becomes. */
export interface WardPair {
  readonly fromId: number;
  readonly intoId: number;
}

type Reasoned = Recording & { readonly reason: string };

/** Whether a ward of the facility was merged into another one or entered in error; null when it has no such ward. */
export async function isGone(read: Read, facilityId: number, wardId: number): Promise<boolean | null> {
  const row = await read.db.ward.findFirst({ where: { id: wardId, facilityId } });
  return row && (row.mergedIntoId !== null || row.voidKey !== 0);
}

/** The days that were counted by hand on both wards, and whether both counts are the same. */
export async function countsOfBoth(
  read: Read,
  { fromId, intoId }: WardPair,
): Promise<{ day: DayNumber; isSame: boolean }[]> {
  const counts = (wardId: number) =>
    read.db.dailyCount.findMany({
      ...{ where: { wardId }, orderBy: { day: "asc" } },
      select: { day: true, patients: true, catheters: true },
    });
  const into = new Map((await counts(intoId)).map((count) => [count.day, count]));
  return (await counts(fromId)).flatMap(({ day, patients, catheters }) => {
    const there = into.get(day);
    return there ? [{ day, isSame: there.patients === patients && there.catheters === catheters }] : [];
  });
}

/**
 * Moves counts made by hand and the people of a ward; confirmations that a month had no event are withdrawn.
 * `countedTwice`: the days that both wards counted. Such a count is kept with the merged ward too, and counts once.
 */
export async function moveWardEntries(
  tx: Tx,
  by: Reasoned,
  { fromId, intoId, countedTwice }: WardPair & { readonly countedTwice: readonly DayNumber[] },
): Promise<void> {
  const counted = await tx.db.dailyCount.findMany({ where: { wardId: fromId }, select: { day: true } });
  touchDays(tx, ...counted.map(({ day }) => ({ first: day, last: day })));
  const moving = { wardId: fromId, day: { notIn: [...countedTwice] } };
  await tx.db.dailyCount.updateMany({ where: moving, data: { wardId: intoId } });
  const people = await tx.db.personWard.findMany({ where: { wardId: fromId } });
  const there = await tx.db.personWard.findMany({ where: { wardId: intoId } });
  const known = new Set(there.map(({ personId }) => personId));
  await tx.db.personWard.deleteMany({ where: { wardId: fromId } });
  await tx.db.personWard.createMany({
    data: people.filter(({ personId }) => !known.has(personId)).map(({ personId }) => ({ personId, wardId: intoId })),
  });
  for (const { id } of await tx.db.noneFound.findMany({ where: { wardId: fromId, voidKey: 0 } }))
    await tx.db.noneFound.update({
      where: { id },
      data: { voidKey: id, voidReason: by.reason, version: { increment: 1 } },
    });
}

/** Puts the surveillance of a ward on another one; what it was is kept. */
export async function moveScope(tx: Tx, by: Reasoned, scope: ScopeRow, intoId: number): Promise<void> {
  touchDays(tx, daysOfMonths({ from: scope.fromMonth, to: scope.toMonth }));
  await keepVersions(tx, by, [{ kind: "scope", id: scope.id, version: scope.version, body: scope }]);
  const recorded = { recordedAt: new Date(by.now), recordedBy: by.personId };
  await tx.db.scope.update({
    where: { id: scope.id },
    data: { wardId: intoId, version: { increment: 1 }, ...recorded },
  });
}

/** Keeps a ward as a record of what it was merged into. */
export async function setMerged(tx: Tx, by: Reasoned, { fromId, intoId }: WardPair): Promise<void> {
  await touchDescribed(tx, fromId);
  const recorded = { recordedAt: new Date(by.now), recordedBy: by.personId };
  await tx.db.ward.update({
    where: { id: fromId },
    data: { mergedIntoId: intoId, mergeReason: by.reason, version: { increment: 1 }, ...recorded },
  });
}

/** Marks a ward as entered in error, so that its code is free. */
export async function setVoided(tx: Tx, by: Reasoned, wardId: number): Promise<void> {
  await touchDescribed(tx, wardId);
  const recorded = { recordedAt: new Date(by.now), recordedBy: by.personId };
  await tx.db.ward.update({
    where: { id: wardId },
    data: { voidKey: wardId, voidReason: by.reason, version: { increment: 1 }, ...recorded },
  });
}

/** A month lists a ward from the day on from which it is described, also one that never had a patient. */
async function touchDescribed(tx: Tx, wardId: number): Promise<void> {
  const { _min } = await tx.db.wardSetting.aggregate({ where: { wardId }, _min: { fromDay: true } });
  if (_min.fromDay !== null) touchDays(tx, { first: _min.fromDay, last: null });
}

/** A ward that was merged into another one, with who did so. */
export interface MergedWard {
  readonly wardId: number;
  readonly code: string;
  readonly reason: string | null;
  readonly mergedAt: number;
  readonly mergedBy: number;
}

/** The wards that were merged into a ward, by code. */
export async function mergedInto(read: Read, wardId: number): Promise<MergedWard[]> {
  const rows = await read.db.ward.findMany({ where: { mergedIntoId: wardId }, orderBy: { code: "asc" } });
  return rows.map(({ id, code, mergeReason, recordedAt, recordedBy }) => ({
    ...{ wardId: id, code, reason: mergeReason, mergedAt: recordedAt.getTime(), mergedBy: recordedBy },
  }));
}

/** What stands of a ward, each kind of entry with how many there are; what was voided is not counted. */
export async function entriesOfWard(read: Read, facilityId: number, wardId: number): Promise<Record<string, number>> {
  const { db } = read;
  const code = (await db.ward.findFirst({ where: { id: wardId, facilityId } }))?.code ?? "";
  return {
    "unit stays": await db.wardStay.count({ where: { wardId, voidKey: 0, stay: { voidKey: 0 } } }),
    "patient-days": await db.patientDay.count({ where: { wardId } }),
    "manual counts": await db.dailyCount.count({ where: { wardId } }),
    "surveillance periods": await db.scope.count({ where: { wardId, voidKey: 0 } }),
    "policy versions": await db.policyVersion.count({ where: { facilityId, wardId } }),
    "confirmations of no event": await db.noneFound.count({ where: { wardId, voidKey: 0 } }),
    aliases: await db.wardAlias.count({ where: { wardId, voidKey: 0 } }),
    "merged units": await db.ward.count({ where: { mergedIntoId: wardId } }),
    people: await db.personWard.count({ where: { wardId } }),
    "lines of files": await waitingLinesNaming(read, facilityId, code),
  };
}

/** Lines that wait or are held for repair and have the code in a cell: what ended long ago is not looked through. */
async function waitingLinesNaming(read: Read, facilityId: number, code: string): Promise<number> {
  const wards = { contains: JSON.stringify(code) };
  const held = await read.db.importLineMonth.findMany({
    where: { facilityId, wards, importLine: { state: "refused" } },
    select: { importId: true, file: true, line: true },
    distinct: ["importId", "file", "line"],
  });
  const rows = await read.db.importLine.findMany({
    where: {
      import: { facilityId, state: { in: waitingStates } },
      ...{ state: { in: ["staged", "refused"] }, content: { contains: code } },
    },
    select: { content: true },
  });
  const signs = code.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&");
  const cell = new RegExp(`(^|[,;\\t"])\\s*${signs}\\s*($|[,;\\t"\\r\\n])`);
  return held.length + rows.filter(({ content }) => cell.test(content ?? "")).length;
}
