import {
  bySubject,
  type Determination,
  determineWithHinges,
  type Edition,
  type SurveillanceTimeline,
} from "../criteria/index.ts";
import type { DayNumber } from "../days/day-number.ts";
import { type EditionFamily, editionInForce, longestWindowDays } from "../editions/index.ts";
import { type ReadOn, readingsOf } from "../editions/readings.ts";
import type { MayCount } from "./may-count.ts";
import { placeOf } from "./place-of.ts";

/** A determination, with the ward at collection. */
interface AtCollection {
  readonly determination: Determination;
  readonly placeId: number | null;
}

/** The same, with where an event of it could count. */
export interface PlacedDetermination extends AtCollection {
  readonly mayCount: readonly MayCount[] | null;
}

/** Whose definitions a ward is watched by on a day; null stands for no ward. */
export type FamilyOf = (wardId: number | null, day: DayNumber) => EditionFamily;

/**
 * Every urine culture of a patient by the edition that its ward is watched by: first the ward at collection; where an
 * event then belongs to a ward that is watched by other definitions, by these. Of each family the edition in force on the
 * day of collection, with the readings of that day, or of the date of event where there is one. A finding in urine is a subject only where those definitions take it for one. In the order of days.
 */
export function determineByWard(
  timeline: SurveillanceTimeline,
  familyOf: FamilyOf,
  readOn: ReadOn = readingsOf([]),
): AtCollection[] {
  const known = new Map<Edition, ReadonlyMap<string, Determination>>();
  const byEdition = (edition: Edition) => {
    const all =
      known.get(edition) ??
      new Map(determineWithHinges(timeline, edition).map((one) => [`${one.subject.kind} ${one.subject.id}`, one]));
    known.set(edition, all);
    return all;
  };
  // An event of a month with another reading keeps it, also when its culture is of the month after.
  const eventOfBefore = (key: string, placeId: number | null, day: DayNumber) => {
    const edition = editionInForce(familyOf(placeId, day), day);
    const before = readOn(edition, day - longestWindowDays);
    if (before === readOn(edition, day)) return undefined;
    const found = byEdition(before).get(key);
    return found?.event && readOn(edition, found.event.dateOfEvent) === before ? found : undefined;
  };
  const specimens = timeline.specimens
    .filter(({ kind }) => kind === "urine")
    .map(({ id, collected }) => ({ key: `specimen ${id}`, when: collected }));
  const findings = timeline.findings.map(({ id, when }) => ({ key: `finding ${id}`, when }));
  return [...specimens, ...findings]
    .flatMap(({ key, when }): AtCollection[] => {
      const placeId = placeOf(timeline, when);
      const read = (wardId: number | null, day: DayNumber) =>
        byEdition(readOn(editionInForce(familyOf(wardId, day), when.day), day)).get(key);
      const first = eventOfBefore(key, placeId, when.day) ?? read(placeId, when.day);
      const { wardId = null, dateOfEvent = when.day } = first?.event ?? {};
      const determination = wardId === null ? first : (read(wardId, dateOfEvent) ?? first);
      return determination ? [{ determination, placeId }] : [];
    })
    .sort((a, b) => bySubject(a.determination.subject, b.determination.subject));
}
