import type { CountingRules } from "../../domain/counting/patient-days.ts";
import type { UncountedRules } from "../../domain/counting/uncounted-censuses.ts";
import { describedWards, inpatientWards } from "../../domain/counting/ward-setting.ts";
import { censusTable } from "../../domain/days/census.ts";
import type { DayNumber } from "../../domain/days/day-number.ts";
import { type Zone, zoneNamed } from "../../domain/days/zone.ts";
import { type FacilityRow, facility } from "../../store/facilities.ts";
import type { Read } from "../../store/store.ts";
import { type WardRow, wards } from "../../store/wards.ts";

/** What counting in a facility needs to know, for the days from `first` to `last`. */
export interface FacilityRules extends CountingRules, UncountedRules {
  readonly zone: Zone;
  readonly facility: FacilityRow;
  /** By code. */
  readonly wards: readonly WardRow[];
}

/** Loads the census times and ward settings of a facility; only the wards of `wardIds` when given. */
export async function loadCountingRules(
  read: Read,
  facilityId: number,
  days: (zone: Zone) => { first: DayNumber; last: DayNumber },
  wardIds?: readonly number[],
): Promise<FacilityRules> {
  const found = await facility(read, facilityId);
  const rows = await wards(read, facilityId, wardIds);
  const zone = zoneNamed(found.zone);
  const { first, last } = days(zone);
  const settings = new Map(rows.map((row) => [row.id, row.settings]));
  return {
    zone,
    facility: found,
    wards: rows,
    census: censusTable(zone, found.census, first, Math.max(first, last)),
    isInpatient: inpatientWards(settings),
    isDescribed: describedWards(settings),
  };
}
