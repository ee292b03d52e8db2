import { refuse } from "../../../shared/problems.ts";
import { defaultSourceSettings, ownSourceName, type SourceSettings } from "../../../shared/source-settings.ts";
import { facility } from "../../store/facilities.ts";
import { ensureSource, type SourceRow, sourceNamed, sourceOf, sourcesOf } from "../../store/import-sources.ts";
import { importOf } from "../../store/imports.ts";
import type { Read, Tx } from "../../store/store.ts";
import { type Act, type Actor, recording, type Store } from "../act.ts";

/** How the files of an import are read. */
export interface ReadingRules {
  /** The name of the facility's zone. */
  readonly zone: string;
  readonly settings: SourceSettings;
}

/** The number of the source of a new import. Refuses `source-unknown` for one of elsewhere. */
export async function sourceForImport(tx: Tx, act: Act, sourceId: number | undefined): Promise<number> {
  if (sourceId === undefined) return ownSource(tx, act);
  const known = (await sourcesOf(tx, act.actor.facilityId)).some(({ id }) => id === sourceId);
  return known ? sourceId : refuse("source-unknown", "No import source has this number.", { pointer: "/sourceId" });
}

/** The facility's own source, made on first use. */
async function ownSource(tx: Tx, act: Act): Promise<number> {
  const by = recording(act);
  const known = await sourceNamed(tx, by.facilityId, ownSourceName);
  return known?.id ?? ensureSource(tx, by, { name: ownSourceName, settings: defaultSourceSettings });
}

/** The source of this name. Refuses `source-unknown`, naming those that are known. */
export async function knownSource({ store, actor }: Pick<Act, "store" | "actor">, name: string): Promise<SourceRow> {
  const all = await store.read((read) => sourcesOf(read, actor.facilityId));
  const known = all.length === 0 ? "None is recorded yet." : `Known are: ${all.map((one) => one.name).join(", ")}.`;
  return (
    all.find((one) => one.name === name) ?? refuse("source-unknown", `No import source is named ${name}. ${known}`)
  );
}

/** How files are read that name no source. */
export async function settingsOfOwnSource(store: Store, { facilityId }: Actor): Promise<SourceSettings> {
  const own = await store.read((read) => sourceNamed(read, facilityId, ownSourceName));
  return own?.settings ?? defaultSourceSettings;
}

/** How the files of an import are read; of one that was made before sources were recorded, as usual. */
export async function rulesOfImport(read: Read, facilityId: number, importId: number): Promise<ReadingRules> {
  const row = await importOf(read, facilityId, importId);
  const { zone } = await facility(read, facilityId);
  if (row?.sourceId == null) return { zone, settings: defaultSourceSettings };
  return { zone, settings: (await sourceOf(read, facilityId, row.sourceId)).settings };
}
