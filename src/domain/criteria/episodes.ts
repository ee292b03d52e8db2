import { type DayNumber, daysFromTo } from "../days/day-number.ts";
import type { EditionOptions } from "./edition.ts";
import type { SurveillanceStay, SurveillanceTimeline, WardTime } from "./surveillance-timeline.ts";
import type { Choice, Episode } from "./world.ts";

/**
 * The admissions of a patient that reached an inpatient ward, in order. Two stays without a full facility day between
 * them are one where the edition reads it so.
 */
export function episodesOf(
  timeline: SurveillanceTimeline,
  { readmission }: Pick<EditionOptions, "readmission">,
  unknownWards: Choice["unknownWards"],
): Episode[] {
  const episodes = timeline.stays
    .flatMap((stay) => episodeOf(stay, timeline.knownThrough, unknownWards))
    .sort((a, b) => a.firstDay - b.firstDay || a.lastDay - b.lastDay || (a.stayIds[0] ?? 0) - (b.stayIds[0] ?? 0));
  if (readmission === "own-stay") return episodes;
  const joined: Episode[] = [];
  for (const episode of episodes) {
    const before = joined.at(-1);
    if (before && episode.firstDay <= before.lastDay + 1) joined[joined.length - 1] = join(before, episode);
    else joined.push(episode);
  }
  return joined;
}

/** Whether the patient came back within a day, so that the two readings of a readmission part. */
export function hasQuickReturn(timeline: SurveillanceTimeline): boolean {
  const own = episodesOf(timeline, { readmission: "own-stay" }, "inpatient");
  return own.length > episodesOf(timeline, { readmission: "one-stay" }, "inpatient").length;
}

function episodeOf(
  { id, wardTimes, dischargeDay }: SurveillanceStay,
  knownThrough: DayNumber,
  unknownWards: Choice["unknownWards"],
): Episode[] {
  const wards = wardTimes
    .filter(({ setting, start }) => (setting ?? unknownWards) === "inpatient" && start.day <= knownThrough)
    .sort(inOrder)
    .map(({ wardId, start, end }) => ({
      wardId,
      first: start.day,
      last: Math.max(start.day, Math.min(end?.day ?? knownThrough, knownThrough)),
    }));
  const [first] = wards;
  if (!first) return [];
  const inpatientDays = new Set(wards.flatMap((one) => daysFromTo(one.first, one.last)));
  const lastDay = Math.max(...wards.map(({ last }) => last));
  const isOver = dischargeDay !== null && dischargeDay <= knownThrough;
  return [{ firstDay: first.first, lastDay, isOver, inpatientDays, wards, stayIds: [id] }];
}

/** Ward times in the order in which the patient lived them; without instants, by their days. */
function inOrder(a: WardTime, b: WardTime): number {
  const byDay = a.start.day - b.start.day;
  if (byDay !== 0) return byDay;
  const byInstant = (a.start.at ?? 0) - (b.start.at ?? 0);
  if (byInstant !== 0) return byInstant;
  const [endA, endB] = [a.end?.day ?? Number.POSITIVE_INFINITY, b.end?.day ?? Number.POSITIVE_INFINITY];
  if (endA !== endB) return endA < endB ? -1 : 1;
  return a.wardId - b.wardId;
}

function join(a: Episode, b: Episode): Episode {
  return {
    firstDay: a.firstDay,
    lastDay: Math.max(a.lastDay, b.lastDay),
    isOver: a.isOver && b.isOver,
    inpatientDays: new Set([...a.inpatientDays, ...b.inpatientDays]),
    wards: [...a.wards, ...b.wards],
    stayIds: [...a.stayIds, ...b.stayIds],
  };
}
