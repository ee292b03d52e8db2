import { refuse } from "../../shared/problems.ts";
import type { Tx } from "../store/store.ts";
import { wards } from "../store/wards.ts";

/** Refuses `not-found` for a ward that the facility does not have. */
export async function knownWard(tx: Tx, facilityId: number, wardId: number): Promise<void> {
  if ((await wards(tx, facilityId, [wardId])).length === 0)
    refuse("not-found", "There is no such ward in this facility.", { pointer: "/wardId" });
}
