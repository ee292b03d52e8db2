import { type DayNumber, daysFromTo } from "../days/day-number.ts";
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
  const wardsOf = (told: SurveillanceTimeline) => {
    const [world] = worldsOf(told, edition);
    if (!world) throw new Error("a timeline has at least one world");
    return dates.flatMap((date) => wardsOn(date, world).map((wardId) => ({ wardId, day: date })));
  };
  const withUnnamed = namingEveryDay(timeline, [day - windowDays - 1, last]);
  return {
    locations: wardsOf(timeline),
    isPlaceUnknown: wardsOf(withUnnamed).some(({ wardId }) => wardId === unnamedWard),
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

/** The unit of a day of which a stay names none: no unit of a record has this number. */
const unnamedWard = 0;

/**
 * The timeline with the unnamed unit on each of these days of a stay that has no unit. Where an edition attributes an
 * event to that unit, no one knows to which one it belongs, also where the unit of the next day is known.
 */
function namingEveryDay(
  timeline: SurveillanceTimeline,
  [first, last]: readonly [DayNumber, DayNumber],
): SurveillanceTimeline {
  const days = daysFromTo(first, last);
  const stays = timeline.stays.map((stay) => {
    const open = days.filter((day) => lastsOver(stay, day) && !stay.wardTimes.some(touches(day)));
    const added = open.map((day): WardTime => {
      const all = { day, at: null };
      return { wardId: unnamedWard, setting: null, start: all, end: all };
    });
    return { ...stay, wardTimes: [...stay.wardTimes, ...added] };
  });
  return { ...timeline, stays };
}

function lastsOver({ admissionDay, dischargeDay }: SurveillanceStay, day: DayNumber): boolean {
  return admissionDay <= day && (dischargeDay === null || day <= dischargeDay);
}

const touches =
  (day: DayNumber) =>
  ({ start, end }: WardTime): boolean =>
    start.day <= day && (end === null || day <= end.day);
