import type { listSources as endpoint } from "../../../shared/api/import-sources.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { sourcesOf } from "../../store/import-sources.ts";
import { aliasesOf } from "../../store/ward-aliases.ts";
import type { Act } from "../act.ts";
import { groupedBy } from "../grouped-by.ts";

/** The sources of imported files, by name. */
export async function listSources({ store, actor }: Act): Promise<OutputOf<typeof endpoint>> {
  const { facilityId } = actor;
  const [rows, aliases] = await store.read(async (read) => [
    await sourcesOf(read, facilityId),
    groupedBy(await aliasesOf(read, facilityId), ({ sourceId }) => sourceId),
  ]);
  const aliasesAt = (id: number) =>
    (aliases.get(id) ?? []).map(({ id: aliasId, sourceId: _, ...alias }) => ({ aliasId, ...alias }));
  return { sources: rows.map(({ id: sourceId, ...row }) => ({ sourceId, ...row, aliases: aliasesAt(sourceId) })) };
}
