import type { CensusTime, Day } from "../../shared/day.ts";
import type { Store } from "../../src/store/store.ts";
import type { Actor } from "../../src/usecases/act.ts";
import { changeFacility } from "../../src/usecases/settings/change-facility.ts";
import { setUpFacility } from "../../src/usecases/settings/set-up-facility.ts";
import { addWard } from "../../src/usecases/wards/add-ward.ts";
import { chanceOf } from "./chance.ts";
import { clockChangeAfter, hardCensusTimes, hardZones, midnight, nextMonth } from "./hard-zones.ts";
import { hourMs, minuteMs } from "./scene.ts";

/** A facility in which nothing has happened yet. */
export interface RandomFacility {
  readonly actor: Actor;
  readonly start: number;
  /** The instants around the clock changes of the time in which it lives. */
  readonly hardInstants: readonly number[];
}

/** Days before and after the day that is hard in the zone. */
const daysBefore = 30;
const daysAfter = 30;

/** The days that a run is meant to last. */
export const runDays = daysBefore + daysAfter;

/** Sets up a facility in a zone, with a census time or two and five wards. */
export async function openRandomFacility(store: Store, seed: number): Promise<RandomFacility> {
  const chance = chanceOf(-1 - seed);
  const place = chance.pick(hardZones);
  const { zone } = place;
  const start = midnight(place, -daysBefore);
  const end = midnight(place, daysAfter);
  const time = () => chance.pick(hardCensusTimes) as CensusTime;
  const person = { name: "Robin Vale", roles: ["prevention", "administrator"] as const };
  const setUp = { name: "Alder Bay Hospital", zone, censusTime: time(), person };
  const actor = await setUpFacility({ store, now: start }, setUp);
  const act = { store, actor, now: start };
  const fromDay = nextMonth(zone, start) as Day;
  if (chance.percent(40)) await changeFacility(act, { census: { time: time(), fromDay } });
  const last = chance.pick(["procedure", "outpatient"] as const);
  for (const [i, setting] of (["inpatient", "inpatient", "inpatient", last, null] as const).entries()) {
    const ward = { code: `W${i + 1}`, name: `Ward ${i + 1}`, type: null, setting, beds: null, openedDay: null };
    await addWard(act, ward);
  }
  return { actor, start, hardInstants: aroundClockChanges(zone, start, end) };
}

function aroundClockChanges(zone: string, start: number, end: number): number[] {
  const found: number[] = [];
  for (let at = clockChangeAfter(zone, start); at !== null && at < end; at = clockChangeAfter(zone, at))
    for (const off of [-hourMs, -30 * minuteMs, -minuteMs, 0, minuteMs, 30 * minuteMs, hourMs]) found.push(at + off);
  return found;
}
