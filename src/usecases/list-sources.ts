import type { listSources as endpoint } from "../../shared/api/import-sources.ts";
import type { OutputOf } from "../../shared/endpoint.ts";
import { sourcesOf } from "../store/import-sources.ts";
import type { Act } from "./act.ts";

/** The sources of imported files, by name. */
export async function listSources({ store, actor }: Act): Promise<OutputOf<typeof endpoint>> {
  const rows = await store.read((read) => sourcesOf(read, actor.facilityId));
  return { sources: rows.map(({ id: sourceId, ...row }) => ({ sourceId, ...row })) };
}
