import { refuse } from "../../../shared/problems.ts";
import type { DayNumber } from "../../domain/days/day-number.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import { facility } from "../../store/facilities.ts";
import type { Recording } from "../../store/patients.ts";
import type { Read } from "../../store/store.ts";

/** Refuses `in-the-future` for a day of birth that has not come yet in the facility's zone; null passes. */
export async function refuseUnborn(
  read: Read,
  { facilityId, now }: Recording,
  birthDay: DayNumber | null,
): Promise<void> {
  if (birthDay === null) return;
  const { zone } = await facility(read, facilityId);
  if (birthDay > zoneNamed(zone).dayOf(now))
    refuse("in-the-future", "This day has not come yet.", { pointer: "/birthDay" });
}
