import { refuse } from "../../shared/problems.ts";
import type { Tx } from "../store/store.ts";
import { wards } from "../store/wards.ts";

/** Refuses `not-found` for a ward that the facility does not have; `pointer` is the field that named it. */
export async function knownWard(tx: Tx, facilityId: number, wardId: number, pointer = "/wardId"): Promise<void> {
  if ((await wards(tx, facilityId, [wardId])).length === 0)
    refuse("not-found", "There is no such ward in this facility.", { pointer });
}
