import { type CensusTime, censusTime as censusTimeShape, type Day } from "../../../shared/day.ts";
import { refuse } from "../../../shared/problems.ts";
import { dayNumber, dayText } from "../../domain/days/day-number.ts";
import { monthDays, monthOf } from "../../domain/days/month.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import { writeAudit } from "../../store/audit.ts";
import { keepVersions } from "../../store/entry-versions.ts";
import {
  addCensus,
  type FacilityRow,
  hasStays,
  lockFacility,
  replaceCensus,
  updateFacility,
} from "../../store/facilities.ts";
import type { Recording } from "../../store/patients.ts";
import type { Tx } from "../../store/store.ts";
import { type Act, recording } from "../act.ts";

export interface ChangeFacility {
  readonly name?: string;
  /** Only while nobody was ever admitted. */
  readonly zone?: string;
  /** A census time and the day from which it holds: the first day of a future month, any day before the first stay. */
  readonly census?: { readonly time: CensusTime; readonly fromDay: Day };
  readonly reason?: string;
}

/**
 * Changes the settings of the facility.
 * Refuses `zone-fixed`, `census-change-too-early`, `census-time-unreadable`, `zone-unknown`, `field-missing`.
 */
export function changeFacility(act: Act, input: ChangeFacility): Promise<{ facilityId: number }> {
  return act.store.tx(async (tx) => {
    const by = recording(act);
    const facility = await lockFacility(tx, by.facilityId);
    const inUse = await hasStays(tx, by.facilityId);
    await changeNameOrZone(tx, act, { facility, inUse, input });
    if (input.census !== undefined) await changeCensus(tx, act, { facility, inUse, input });
    await writeAudit(tx, by, { action: "change-facility", details: input });
    return { facilityId: by.facilityId };
  });
}

/** {@link changeFacility} of the census time alone. */
export function setCensus(
  act: Act,
  { time, fromDay, reason }: { time: CensusTime; fromDay: Day; reason: string },
): Promise<{ facilityId: number }> {
  return changeFacility(act, { census: { time, fromDay }, reason });
}

interface Situation {
  readonly facility: FacilityRow;
  readonly inUse: boolean;
  readonly input: ChangeFacility;
}

async function changeNameOrZone(tx: Tx, act: Act, { facility, inUse, input }: Situation): Promise<void> {
  const name = (input.name ?? facility.name).trim();
  const zone = zoneNamed(input.zone ?? facility.zone).name;
  if (name === facility.name && zone === facility.zone) return;
  if (name === "") refuse("field-missing", "A facility needs a name.", { pointer: "/name" });
  if (inUse && zone !== facility.zone)
    refuse("zone-fixed", "Patients were admitted already, and their days were counted in the present time zone.", {
      pointer: "/zone",
    });
  const body = { name: facility.name, zone: facility.zone };
  // Taking the row counted its version up, so what is put away here is the version before.
  await keepVersions(tx, withReason(act, input), [
    { kind: "facility", id: facility.id, version: facility.version - 1, body },
  ]);
  await updateFacility(tx, facility.id, { name, zone });
}

async function changeCensus(tx: Tx, act: Act, { facility, inUse, input }: Situation): Promise<void> {
  const { time, fromDay: day } = input.census ?? refuse("field-missing", "No census time was given.");
  if (!censusTimeShape.safeParse(time).success)
    refuse("census-time-unreadable", "This is no census time.", { pointer: "/time" });
  const fromDay = dayNumber(day);
  const today = zoneNamed(facility.zone).dayOf(act.now);
  const firstOfMonth = monthDays(monthOf(fromDay)).first === fromDay;
  if (inUse && (!firstOfMonth || fromDay <= today))
    refuse("census-change-too-early", `The census time cannot change from ${dayText(fromDay)} on.`, {
      pointer: "/fromDay",
    });
  const by = recording(act);
  const same = facility.census.find((census) => census.fromDay === fromDay);
  if (!same) {
    await addCensus(tx, by, { fromDay, time });
    return;
  }
  const body = { fromDay, time: same.time };
  const old = { kind: "facility-census", id: same.id, version: same.version, body };
  await keepVersions(tx, withReason(act, input), [old]);
  await replaceCensus(tx, by, { id: same.id, time });
}

function withReason(act: Act, { reason }: ChangeFacility): Recording & { reason?: string } {
  return { ...recording(act), ...(reason === undefined ? {} : { reason }) };
}
