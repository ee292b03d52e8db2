import type { Moment, SurveillanceTimeline, WardTime } from "../criteria/index.ts";
import { dayMs } from "../days/day-number.ts";

/**
 * The ward of a patient at a moment: where they were, else, off the wards and after discharge, the last one before it,
 * else the first one after it. Where the hour is not known the last ward of the day is taken. Null without any ward.
 */
export function placeOf({ stays }: Pick<SurveillanceTimeline, "stays">, when: Moment): number | null {
  const times = stays.flatMap(({ wardTimes }) => wardTimes).sort((a, b) => order(a.start) - order(b.start));
  const asked = when.at ?? (when.day + 1) * dayMs - 1;
  const begun = (time: WardTime): boolean =>
    when.at !== null && time.start.at !== null ? time.start.at <= asked : time.start.day <= when.day;
  return (times.findLast(begun) ?? times[0])?.wardId ?? null;
}

/** Moments in the order of time; a day without an hour begins it. */
function order({ day, at }: Moment): number {
  return at ?? day * dayMs;
}
