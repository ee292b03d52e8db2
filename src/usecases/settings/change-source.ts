import type {
  addSource as add,
  changeSource as change,
  removeAlias as remove,
} from "../../../shared/api/import-sources.ts";
import type { InputOf, OutputOf } from "../../../shared/endpoint.ts";
import { refuse } from "../../../shared/problems.ts";
import { writeAudit } from "../../store/audit.ts";
import { lockFacility } from "../../store/facilities.ts";
import {
  sourceNamed,
  sourceOf,
  addSource as storeSource,
  changeSource as storeSourceChange,
} from "../../store/import-sources.ts";
import type { Tx } from "../../store/store.ts";
import { aliasOf, voidAlias } from "../../store/ward-aliases.ts";
import { type Act, recording } from "../act.ts";
import { sameVersion } from "../same-version.ts";

/** A further source of imported files. Refuses `source-name-taken`. */
export function addSource(act: Act, { name, settings }: InputOf<typeof add>): Promise<OutputOf<typeof add>> {
  return act.store.tx(async (tx) => {
    const by = recording(act);
    await lockFacility(tx, by.facilityId);
    await refuseTaken(tx, by.facilityId, name);
    const sourceId = await storeSource(tx, by, { name, settings });
    await writeAudit(tx, by, { action: "add-source", details: { sourceId, settings } });
    return { sourceId, version: 1 };
  });
}

/**
 * Changes the name of a source and how its files are read from now on.
 * Refuses `not-found`, `stale-version` and `source-name-taken`.
 */
export function changeSource(
  act: Act,
  { sourceId, name, settings, reason, seenVersion }: InputOf<typeof change>,
): Promise<OutputOf<typeof change>> {
  return act.store.tx(async (tx) => {
    const by = { ...recording(act), reason };
    await lockFacility(tx, by.facilityId);
    const source = await sourceOf(tx, by.facilityId, sourceId);
    const { version } = source;
    sameVersion(source, seenVersion, { name: source.name, ...source.settings, version });
    if (name !== source.name) await refuseTaken(tx, by.facilityId, name);
    await storeSourceChange(tx, by, source, { name, settings });
    await writeAudit(tx, by, { action: "change-source", details: { sourceId, settings, reason } });
    return { sourceId, version: version + 1 };
  });
}

/** Removes what a source calls a ward. Refuses `not-found` and `stale-version`. */
export function removeAlias(
  act: Act,
  { sourceId, aliasId, reason, seenVersion }: InputOf<typeof remove>,
): Promise<OutputOf<typeof remove>> {
  return act.store.tx(async (tx) => {
    const by = { ...recording(act), reason };
    await lockFacility(tx, by.facilityId);
    const alias = await aliasOf(tx, by.facilityId, { sourceId, aliasId });
    const { code, wardId, version } = alias;
    sameVersion(alias, seenVersion, { code, wardId, version });
    await voidAlias(tx, by, alias);
    await writeAudit(tx, by, { action: "remove-alias", details: { sourceId, aliasId, wardId, reason } });
    return { aliasId, version: version + 1 };
  });
}

async function refuseTaken(tx: Tx, facilityId: number, name: string): Promise<void> {
  const other = await sourceNamed(tx, facilityId, name);
  if (other)
    refuse("source-name-taken", "Another import source has this name.", {
      pointer: "/name",
      other: `import source ${other.id}`,
    });
}
