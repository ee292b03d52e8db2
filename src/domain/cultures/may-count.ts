import type { Month } from "../../../shared/day.ts";
import {
  possibleLocations,
  type Subject,
  type SurveillanceEvent,
  type SurveillanceTimeline,
} from "../criteria/index.ts";
import { monthOf } from "../days/month.ts";
import { editionInForce, familyNamed, longestWindowDays } from "../editions/index.ts";
import { type ReadOn, readingsOf } from "../editions/readings.ts";
import { scopeIn, type WatchedMonths } from "./family-of-wards.ts";

/** A unit under surveillance in a month in which an event of a culture could count. */
export interface MayCount {
  readonly wardId: number;
  readonly month: Month;
}

/**
 * Where an event of a culture could count: each possible location of attribution that is under surveillance in the month
 * of that date of event, in the order of dates. Empty: the culture is out of scope, whatever unit collected it. Null: the
 * record names no place for a date that is possible, so that it cannot be said and the culture stays in scope.
 *
 * `events` are those that were determined: of the culture itself, and of the one that it repeats.
 * A location counts under the definitions by which it is under surveillance. A scope of an edition that is not held here
 * is read with that of the United States, as determinations are.
 */
export function mayCount(
  timeline: SurveillanceTimeline,
  { subject, events }: { readonly subject: Subject; readonly events: readonly (SurveillanceEvent | null)[] },
  scopes: readonly WatchedMonths[],
  readOn: ReadOn = readingsOf([]),
): MayCount[] | null {
  const tried = (["us", "ecdc"] as const).flatMap((family) => {
    const edition = editionInForce(family, subject.day);
    // An event of an earlier month has the reading of that month.
    const read = new Set([subject.day - longestWindowDays, subject.day].map((day) => readOn(edition, day)));
    return [...read].map((one) => ({ family, ...possibleLocations(timeline, subject, one) }));
  });
  const determined = events.flatMap((event) =>
    event === null || event.wardId === null ? [] : [{ wardId: event.wardId, day: event.dateOfEvent, family: null }],
  );
  const possible = [
    ...tried.flatMap(({ family, locations }) => locations.map((one) => ({ ...one, family }))),
    ...determined,
  ].sort((a, b) => a.day - b.day || a.wardId - b.wardId);
  const counts = new Map<string, MayCount>();
  for (const { wardId, day, family } of possible) {
    const month = monthOf(day);
    const scope = scopeIn(scopes, wardId, month);
    if (!scope || (family !== null && (familyNamed(scope.edition) ?? "us") !== family)) continue;
    counts.set(`${wardId} ${month}`, { wardId, month });
  }
  if (counts.size === 0 && tried.some(({ isPlaceUnknown }) => isPlaceUnknown)) return null;
  return [...counts.values()];
}
