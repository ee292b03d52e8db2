import type { Instant } from "../days/day-number.ts";
import type { CountedStay } from "./counted-timeline.ts";
import type { PatientTimeline } from "./timeline.ts";

/**
 * The earliest instant from which two states of a timeline can count differently: the beginning of the earliest stay
 * that was changed, before or after. Null when nothing changed.
 */
export function firstChange(before: PatientTimeline, after: PatientTimeline): Instant | null {
  const old = new Map(before.stays.map((stay) => [stay.id, stay]));
  const starts = after.stays.flatMap((stay) => {
    const was = old.get(stay.id);
    if (was === stay) return [];
    return was ? [beginning(was), beginning(stay)] : [beginning(stay)];
  });
  return starts.length === 0 ? null : Math.min(...starts);
}

/** When a stay begins to count at the earliest. */
export function beginning(stay: CountedStay): Instant {
  return Math.min(stay.admittedAt, ...stay.wardStays.map((w) => w.startAt));
}

/**
 * The latest instant that timelines reach: `now`, or an end that was recorded before the clock was set back. The days up
 * to it have to be known, or a recount would take rows for surplus that it only did not look at.
 */
export function latestEnd(timelines: Iterable<{ readonly stays: readonly CountedStay[] }>, now: Instant): Instant {
  let latest = now;
  for (const { stays } of timelines)
    for (const stay of stays)
      for (const end of [stay.dischargedAt, ...stay.wardStays.map((w) => w.endAt)])
        if (end !== null && end > latest) latest = end;
  return latest;
}
