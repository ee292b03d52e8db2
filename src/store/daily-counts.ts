import type { DayNumber } from "../domain/days/day-number.ts";
import { keepVersions } from "./entry-versions.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";
import { touchDays } from "./trace.ts";

/** What somebody counted by hand: patients at the daily count, and those of them with an indwelling catheter. */
export interface CountedByHand {
  readonly wardId: number;
  readonly day: DayNumber;
  readonly patients: number;
  readonly catheters: number;
}

const columns = { wardId: true, day: true, patients: true, catheters: true, version: true, recordedBy: true } as const;

/** Stores counts made by hand; a count that differs replaces the earlier one of its day, which is kept. */
export async function putDailyCounts(
  tx: Tx,
  by: Recording & { reason?: string },
  counts: readonly CountedByHand[],
): Promise<void> {
  const recorded = { recordedAt: new Date(by.now), recordedBy: by.personId };
  touchDays(tx, ...counts.map(({ day }) => ({ first: day, last: day })));
  for (const { wardId, day, patients, catheters } of counts) {
    const old = await tx.db.dailyCount.findUnique({ where: { wardId_day: { wardId, day } } });
    if (!old) {
      await tx.db.dailyCount.create({ data: { id: tx.newId(), wardId, day, patients, catheters, ...recorded } });
      continue;
    }
    if (old.patients === patients && old.catheters === catheters) continue;
    const body = { wardId, day, patients: old.patients, catheters: old.catheters };
    await keepVersions(tx, by, [{ kind: "daily-count", id: old.id, version: old.version, body }]);
    const version = { increment: 1 };
    await tx.db.dailyCount.update({ where: { id: old.id }, data: { patients, catheters, version, ...recorded } });
  }
}

/** A count as it is stored. */
export interface StoredCount extends CountedByHand {
  readonly version: number;
  readonly recordedBy: number;
}

/** The count of a ward day; null when nobody counted. */
export function dailyCount(read: Read, wardId: number, day: DayNumber): Promise<StoredCount | null> {
  return read.db.dailyCount.findUnique({ where: { wardId_day: { wardId, day } }, select: columns });
}

/** Counts made by hand on these wards, from `first` to `last`. */
export async function dailyCounts(
  read: Read,
  wardIds: readonly number[],
  { first, last }: { first: DayNumber; last: DayNumber },
): Promise<StoredCount[]> {
  return read.db.dailyCount.findMany({
    where: { wardId: { in: [...wardIds] }, day: { gte: first, lte: last } },
    select: columns,
    orderBy: [{ wardId: "asc" }, { day: "asc" }],
  });
}
