import { changedStretches, runningOn } from "../domain/timeline/changed-stretches.ts";
import type { Catheter, Entry, PatientTimeline, Stay, WardStay } from "../domain/timeline/timeline.ts";
import { insertRows, updateRows } from "./bulk.ts";
import { catheterTable, type EntryTable, stayTable, wardStayTable } from "./entry-tables.ts";
import { keepVersions } from "./entry-versions.ts";
import type { Recording } from "./patients.ts";
import type { Tx } from "./store.ts";
import { touchTimes } from "./trace.ts";

export interface TimelineChange {
  readonly before: PatientTimeline;
  readonly after: PatientTimeline;
}

interface Placed<T extends Entry> {
  readonly entry: T;
  readonly parentId: number;
  readonly old: T | undefined;
}

/**
 * Stores what differs between two states of timelines: new entries are added, changed ones replaced after the old
 * version was put away. Nothing is ever taken out. Entries that were not changed must be the same objects.
 */
export async function saveTimelines(
  tx: Tx,
  by: Recording & { reason?: string },
  changes: readonly TimelineChange[],
): Promise<void> {
  const stays: Placed<Stay>[] = [];
  const wardStays: Placed<WardStay>[] = [];
  const catheters: Placed<Catheter>[] = [];
  for (const { before, after } of changes) {
    touchTimes(tx, ...runningOn(changedStretches(before, after), before, after));
    const oldStays = new Map(before.stays.map((stay) => [stay.id, stay]));
    for (const stay of after.stays) {
      const old = oldStays.get(stay.id);
      if (old === stay) continue;
      if (old?.version !== stay.version) stays.push({ entry: stay, parentId: stay.patientId, old });
      wardStays.push(...changed(stay.id, old?.wardStays ?? [], stay.wardStays));
      catheters.push(...changed(stay.id, old?.catheters ?? [], stay.catheters));
    }
  }
  await saveEntries(tx, by, { table: stayTable, placed: stays });
  await saveEntries(tx, by, { table: wardStayTable, placed: wardStays });
  await saveEntries(tx, by, { table: catheterTable, placed: catheters });
}

function changed<T extends Entry>(parentId: number, before: readonly T[], after: readonly T[]): Placed<T>[] {
  const old = new Map(before.map((entry) => [entry.id, entry]));
  return after
    .filter((entry) => old.get(entry.id) !== entry)
    .map((entry) => ({ entry, parentId, old: old.get(entry.id) }));
}

async function saveEntries<T extends Entry>(
  tx: Tx,
  by: Recording & { reason?: string },
  { table, placed }: { table: EntryTable<T>; placed: readonly Placed<T>[] },
): Promise<void> {
  // An entry that was changed again before it was ever stored is new all the same.
  const added = placed.filter((p) => !p.old).map((p) => table.cells({ ...p.entry, version: 1 }, p.parentId, by));
  const replaced = placed.flatMap((p) => (p.old ? [{ ...p, old: p.old }] : []));
  await insertRows(tx, table, added);
  await keepVersions(
    tx,
    by,
    replaced.map(({ old }) => ({ kind: table.kind, id: old.id, version: old.version, body: bodyOf(old) })),
  );
  await updateRows(
    tx,
    table,
    replaced.map(({ entry, old, parentId }) => table.cells({ ...entry, version: old.version + 1 }, parentId, by)),
    // Who recorded an entry first, and when: who changed it stands with the version that was put away.
    ["recorded_at", "recorded_by"],
  );
}

/** What has versions of its own and does not belong to those of the entry. */
const apart = ["wardStays", "catheters", "noted"];

function bodyOf(entry: Entry): object {
  return Object.fromEntries(Object.entries(entry).filter(([name]) => !apart.includes(name)));
}
