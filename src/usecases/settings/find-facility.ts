import type { CensusTime } from "../../../shared/day.ts";
import { refuse } from "../../../shared/problems.ts";
import { facilities, facility } from "../../store/facilities.ts";
import { firstPerson } from "../../store/people.ts";
import type { Store } from "../../store/store.ts";
import { wards } from "../../store/wards.ts";
import type { Actor } from "../act.ts";
import { setUpFacility } from "./set-up-facility.ts";

/**
 * The person in whose name a command at the machine acts: the first of the installation's first facility. Null when
 * there is no facility yet.
 */
export function firstActor(store: Store): Promise<Actor | null> {
  return store.read(async (read) => {
    const [first] = await facilities(read);
    if (!first) return null;
    const person = await firstPerson(read, first.id);
    if (!person) throw new Error(`facility ${first.id} has no person`);
    return person;
  });
}

/** {@link firstActor}, after setting up the facility of the settings when there is none. */
export async function firstActorOrSetUp(
  at: { store: Store; now: number },
  settings: { name: string; zone: string; censusTime: string },
): Promise<Actor> {
  const found = await firstActor(at.store);
  if (found) return found;
  const { name, zone } = settings;
  const censusTime = settings.censusTime as CensusTime;
  const person = { name: "First person", roles: ["prevention", "administrator"] } as const;
  return setUpFacility(at, { name, zone, censusTime, person });
}

/** Whether the installation holds the fictional hospital. */
export function isDemo(store: Store): Promise<boolean> {
  return store.read(async (read) => (await facilities(read)).some((row) => row.demo));
}

/** Refuses `demo-record`: real patients never join the invented ones. */
export async function refuseDemo(store: Store): Promise<void> {
  if (await isDemo(store)) refuse("demo-record", "The database holds the demo hospital, whose patients are fictional.");
}

/** The name of the time zone of the facility in which a person acts. */
export async function zoneOfFacility(store: Store, { facilityId }: Actor): Promise<string> {
  return (await store.read((read) => facility(read, facilityId))).zone;
}

/** The codes of wards that count nowhere because nobody said what they are, in order. */
export async function wardsWithoutSetting(store: Store, { facilityId }: Actor): Promise<string[]> {
  const rows = await store.read((read) => wards(read, facilityId));
  return rows.filter((ward) => !ward.settings.some(({ setting }) => setting !== null)).map((ward) => ward.code);
}
