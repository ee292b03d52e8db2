import type { DayNumber } from "../days/day-number.ts";
import type { Edition } from "./edition.ts";
import { episodesOf } from "./episodes.ts";
import type { SurveillanceStay, SurveillanceTimeline, WardTime } from "./surveillance-timeline.ts";
import { type World, worldsOf } from "./world.ts";

/** A unit to which an event of a culture could belong, and the date of event with which it would. */
export interface PossibleLocation {
  readonly wardId: number;
  readonly day: DayNumber;
}

/** All of them, and whether the record leaves the patient's place open on a date of event that is possible. */
export interface PossibleLocations {
  readonly locations: readonly PossibleLocation[];
  readonly isPlaceUnknown: boolean;
}

/**
 * The locations of attribution that an edition could give to an event of a culture, whatever its signs say: one for each
 * date of event in the infection window, by the rule of transfers. The anchor itself dates an event where the edition
 * says so, so no later date is possible then. A unit of unknown setting is tried as inpatient and as outpatient.
 */
export function possibleLocations(
  timeline: SurveillanceTimeline,
  { day }: { readonly day: DayNumber },
  edition: Edition,
): PossibleLocations {
  const { windowDays } = edition.options;
  const last = edition.date.anchorDates ? day : day + windowDays;
  const dates = Array.from({ length: last - day + windowDays + 1 }, (_, at) => day - windowDays + at);
  const [world] = worldsOf(timeline, edition);
  if (!world) throw new Error("a timeline has at least one world");
  const found = dates.map((date) => ({ date, wardIds: wardsOn(date, world) }));
  return {
    locations: found.flatMap(({ date, wardIds }) => wardIds.map((wardId) => ({ wardId, day: date }))),
    isPlaceUnknown: found.some(({ date, wardIds }) => wardIds.length === 0 && isWithoutPlace(timeline, date)),
  };
}

function wardsOn(date: DayNumber, world: World): number[] {
  const { timeline, edition } = world;
  const found = (["inpatient", "outpatient"] as const).flatMap((unknownWards) =>
    episodesOf(timeline, edition.options, unknownWards).flatMap(
      (episode) => edition.attribution.wardOf(date, episode, world) ?? [],
    ),
  );
  return [...new Set(found)];
}

/** Whether a stay lasts over a day of which it names no place. */
function isWithoutPlace({ stays, knownThrough }: SurveillanceTimeline, day: DayNumber): boolean {
  return day <= knownThrough && stays.some((stay) => lastsOver(stay, day) && !stay.wardTimes.some(touches(day)));
}

function lastsOver({ wardTimes, dischargeDay }: SurveillanceStay, day: DayNumber): boolean {
  const begins = Math.min(...wardTimes.map(({ start }) => start.day));
  return begins <= day && (dischargeDay === null || day <= dischargeDay);
}

const touches =
  (day: DayNumber) =>
  ({ start, end }: WardTime): boolean =>
    start.day <= day && (end === null || day <= end.day);
