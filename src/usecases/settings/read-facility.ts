import type { readFacility as endpoint } from "../../../shared/api/facility.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { dayText } from "../../domain/days/day-number.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import { facility } from "../../store/facilities.ts";
import type { Act } from "../act.ts";

/** The facility in which the person acts, with its census times and the day that it is there now. */
export async function readFacility({ store, actor, now }: Act): Promise<OutputOf<typeof endpoint>> {
  const { id, name, demo, zone, census } = await store.read((read) => facility(read, actor.facilityId));
  return {
    facilityId: id,
    name,
    demo,
    zone,
    census: census.map(({ fromDay, time }) => ({ fromDay: dayText(fromDay), time })),
    now: new Date(now).toISOString(),
    today: dayText(zoneNamed(zone).dayOf(now)),
  };
}
