import type { WayRules } from "../domain/criteria/index.ts";
import { zoneNamed } from "../domain/days/zone.ts";
import { facility } from "../store/facilities.ts";
import type { Read } from "../store/store.ts";
import { wards } from "../store/wards.ts";

/** Loads the zone of a facility, and what each of its wards is from which day on. */
export async function loadWayRules(read: Read, facilityId: number): Promise<WayRules> {
  const { zone } = await facility(read, facilityId);
  const rows = await wards(read, facilityId);
  return { zone: zoneNamed(zone), wards: new Map(rows.map(({ id, settings }) => [id, settings])) };
}
