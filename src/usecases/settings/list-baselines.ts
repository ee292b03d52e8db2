import type { listBaselines as endpoint } from "../../../shared/api/baselines.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { baselines } from "../../store/baselines.ts";
import type { Act } from "../act.ts";

/** Every baseline of the facility with its rows as they were given. */
export async function listBaselines({ store, actor }: Act): Promise<OutputOf<typeof endpoint>> {
  const rows = await store.read((read) => baselines(read, actor.facilityId));
  return {
    baselines: rows.map(({ id, origin: { id: _, ...origin }, rows: given, ...row }) => ({
      ...row,
      ...origin,
      baselineId: id,
      rows: given.map((one) => ({ ...one })),
    })),
  };
}
