import { refuse } from "../../../shared/problems.ts";
import { isOpenOn } from "../../domain/counting/ward-open.ts";
import { dayText, type Instant } from "../../domain/days/day-number.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import { type Stay, wardStaysInOrder } from "../../domain/timeline/timeline.ts";
import { facility } from "../../store/facilities.ts";
import type { Read } from "../../store/store.ts";
import type { WardRow } from "../../store/wards.ts";
import { knownWard } from "./known-ward.ts";

/** Where and when a patient comes to a ward; `pointer` is the field that says so. */
interface Coming {
  readonly wardId: number;
  readonly at: Instant;
  readonly pointer?: string;
}

/**
 * Looks that a patient can come to a ward.
 * Refuses `not-found` for a ward that the facility does not have, and `ward-closed` after the ward's last day.
 */
export async function openWard(read: Read, facilityId: number, coming: Coming): Promise<void> {
  const ward = await knownWard(read, facilityId, coming.wardId, coming.pointer);
  if (ward.closedDay !== null) refuseClosed(ward, await zoneOf(read, facilityId), coming);
}

/** {@link openWard} for a ward that is known only once the record was read: loads what it needs, then looks at once. */
export async function openWards(
  read: Read,
  facilityId: number,
  wards: readonly WardRow[],
): Promise<(coming: Coming) => void> {
  const zone = await zoneOf(read, facilityId);
  return (coming) => {
    const ward = wards.find(({ id }) => id === coming.wardId);
    if (ward) refuseClosed(ward, zone, coming);
  };
}

/** {@link openWards} for a stay that goes on after a change: its last ward must still be open at that moment. */
export function refuseStayOnClosed(
  refuseIfClosed: (coming: Coming) => void,
  stay: Stay,
  { at, pointer }: { at: Instant; pointer: string },
): void {
  const last = wardStaysInOrder(stay).at(-1);
  if (stay.dischargedAt === null && last && last.endAt === null) refuseIfClosed({ wardId: last.wardId, at, pointer });
}

type Zone = ReturnType<typeof zoneNamed>;

async function zoneOf(read: Read, facilityId: number): Promise<Zone> {
  return zoneNamed((await facility(read, facilityId)).zone);
}

function refuseClosed(ward: WardRow, zone: Zone, { at, pointer = "/wardId" }: Coming): void {
  const { closedDay, code } = ward;
  if (closedDay === null || isOpenOn(ward, zone.dayOf(at))) return;
  refuse("ward-closed", `The last day of unit ${code} was ${dayText(closedDay)}.`, { pointer });
}
