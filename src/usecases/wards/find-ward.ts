import { refuse } from "../../../shared/problems.ts";
import { wards } from "../../store/wards.ts";
import type { Act } from "../act.ts";
import type { Reach } from "../reach.ts";

/**
 * Refuses `not-found` for a ward outside the reach, of another facility, or that was never there: all alike, so that
 * nobody learns which wards exist.
 */
export async function findWard({ store, actor }: Act, wardId: number, reach: Reach): Promise<void> {
  const inReach = reach.wardIds?.includes(wardId) ?? true;
  const found = inReach && (await store.read((read) => wards(read, actor.facilityId, [wardId]))).length > 0;
  if (!found) refuse("not-found", "There is no such unit here.", { pointer: "/wardId" });
}
