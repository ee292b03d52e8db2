import type { listComparisons as endpoint } from "../../../shared/api/baselines.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { comparisons } from "../../store/comparisons.ts";
import type { Act } from "../act.ts";

/** Every version of what months are compared with. */
export async function listComparisons({ store, actor }: Act): Promise<OutputOf<typeof endpoint>> {
  const rows = await store.read((read) => comparisons(read, actor.facilityId));
  return { comparisons: rows.map(({ factors, ...row }) => ({ ...row, factors: factors.map((one) => ({ ...one })) })) };
}
