import { refuse } from "../../../shared/problems.ts";
import type { Read } from "../../store/store.ts";
import { type WardRow, wards } from "../../store/wards.ts";

/** A ward of the facility. Refuses `not-found` for one that it does not have; `pointer` is the field that named it. */
export async function knownWard(read: Read, facilityId: number, wardId: number, pointer = "/wardId"): Promise<WardRow> {
  const [ward] = await wards(read, facilityId, [wardId]);
  return ward ?? refuse("not-found", "There is no such unit in this facility.", { pointer });
}
