import type { listWards as endpoint } from "../../../shared/api/wards.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { inForceOn } from "../../domain/counting/ward-setting.ts";
import { type DayNumber, dayText } from "../../domain/days/day-number.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import { facility } from "../../store/facilities.ts";
import { type WardRow, wards } from "../../store/wards.ts";
import type { Act } from "../act.ts";
import type { Reach } from "../reach.ts";

type Wards = OutputOf<typeof endpoint>;

/** The wards of the facility within reach, by code, as they are today. */
export async function listWards(act: Act, { wardIds }: Reach): Promise<Wards> {
  const { wards } = await wardsToday(act, wardIds);
  return { wards };
}

/** The facility day that it is, and the wards of the facility by code as they are on it; only `wardIds` when given. */
export function wardsToday(
  { store, actor, now }: Act,
  wardIds?: readonly number[],
): Promise<Wards & { readonly today: DayNumber }> {
  return store.read(async (read) => {
    const { zone } = await facility(read, actor.facilityId);
    const today = zoneNamed(zone).dayOf(now);
    return { today, wards: (await wards(read, actor.facilityId, wardIds)).map((ward) => asOf(ward, today)) };
  });
}

function asOf({ id, code, openedDay, closedDay, namedOnly, settings }: WardRow, today: DayNumber): Wards["wards"][0] {
  const said = inForceOn(settings, today);
  return {
    wardId: id,
    code,
    name: said?.name ?? code,
    type: said?.type ?? null,
    setting: said?.setting ?? null,
    beds: said?.beds ?? null,
    openedDay: openedDay === null ? null : dayText(openedDay),
    closedDay: closedDay === null ? null : dayText(closedDay),
    namedOnly,
  };
}
