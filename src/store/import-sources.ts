import { refuse } from "../../shared/problems.ts";
import { defaultSourceSettings, type SourceSettings } from "../../shared/source-settings.ts";
import type { Instant } from "../domain/days/day-number.ts";
import { insertRows } from "./bulk.ts";
import { keepVersions } from "./entry-versions.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";

/** A system that files come from, and how its files are read. */
export interface SourceRow {
  readonly id: number;
  readonly name: string;
  readonly settings: SourceSettings;
  readonly version: number;
  readonly recordedAt: Instant;
  readonly recordedBy: number;
}

/** The sources of a facility, by name. */
export async function sourcesOf(read: Read, facilityId: number): Promise<SourceRow[]> {
  return (await read.db.importSource.findMany({ where: { facilityId }, orderBy: { name: "asc" } })).map(rowFrom);
}

/** A source of a facility. Refuses `not-found`. */
export async function sourceOf(read: Read, facilityId: number, id: number): Promise<SourceRow> {
  const row = await read.db.importSource.findFirst({ where: { id, facilityId } });
  return row ? rowFrom(row) : refuse("not-found", "There is no such import source of this facility.");
}

/** The source of a facility that has this name; null when it has none. */
export async function sourceNamed(read: Read, facilityId: number, name: string): Promise<SourceRow | null> {
  const row = await read.db.importSource.findUnique({ where: { facilityId_name: { facilityId, name } } });
  return row && rowFrom(row);
}

/** A further source; returns its id. */
export async function addSource(
  tx: Tx,
  { facilityId, personId, now }: Recording,
  { name, settings }: Pick<SourceRow, "name" | "settings">,
): Promise<number> {
  const id = tx.newId();
  const recorded = { recordedAt: new Date(now), recordedBy: personId };
  await tx.db.importSource.create({ data: { id, facilityId, name, settings: JSON.stringify(settings), ...recorded } });
  return id;
}

const table = {
  table: "import_source",
  columns: {
    id: "int",
    facility_id: "int",
    name: "text",
    settings: "text",
    version: "int",
    recorded_at: "instant",
    recorded_by: "int",
  },
} as const;

/** A source of that name, made unless there is one; returns its id. Safe against a twin made meanwhile. */
export async function ensureSource(
  tx: Tx,
  { facilityId, personId, now }: Recording,
  { name, settings }: Pick<SourceRow, "name" | "settings">,
): Promise<number> {
  const row = [tx.newId(), facilityId, name, JSON.stringify(settings), 1, now, personId];
  await insertRows(tx, table, [row], "ON CONFLICT (facility_id, name) DO NOTHING");
  return (await tx.db.importSource.findUniqueOrThrow({ where: { facilityId_name: { facilityId, name } } })).id;
}

/** Changes the name and settings of a source; what they were is kept. */
export async function changeSource(
  tx: Tx,
  by: Recording & { reason: string },
  old: SourceRow,
  { name, settings }: Pick<SourceRow, "name" | "settings">,
): Promise<void> {
  const { id, version } = old;
  await keepVersions(tx, by, [{ kind: "import-source", id, version, body: old }]);
  const recorded = { recordedAt: new Date(by.now), recordedBy: by.personId };
  await tx.db.importSource.update({
    where: { id },
    data: { name, settings: JSON.stringify(settings), version: { increment: 1 }, ...recorded },
  });
}

/** Settings that a source was stored without are the usual ones. */
function rowFrom(row: NonNullable<Awaited<ReturnType<Read["db"]["importSource"]["findFirst"]>>>): SourceRow {
  const { id, name, version, recordedAt, recordedBy } = row;
  const settings = { ...defaultSourceSettings, ...(JSON.parse(row.settings) as Partial<SourceSettings>) };
  return { id, name, settings, version, recordedAt: recordedAt.getTime(), recordedBy };
}
