import { refuse } from "../../../shared/problems.ts";
import { censusTable } from "../../domain/days/census.ts";
import type { DayNumber } from "../../domain/days/day-number.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import { facility } from "../../store/facilities.ts";
import type { Act } from "../act.ts";

/**
 * Refuses `in-the-future` while the census of a day has not been taken: its figures are missing, and must not be told
 * as zero. A date that the zone skipped has no census and passes. `pointer` names the field that asked for the day.
 */
export async function censusTaken({ store, actor, now }: Act, day: DayNumber, pointer: string): Promise<void> {
  const { zone, census } = await store.read((read) => facility(read, actor.facilityId));
  const taken = censusTable(zoneNamed(zone), census, day, day).instants[0];
  if (taken !== undefined && taken > now)
    refuse("in-the-future", "No census has been taken in this time yet, so there is nothing to count.", { pointer });
}
