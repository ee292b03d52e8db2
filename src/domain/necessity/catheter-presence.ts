import { type CatheterAge, catheterAge } from "../counting/catheter-age.ts";
import { countsAsIndwelling } from "../counting/counts-as-catheter-day.ts";
import type { DayStretch } from "../counting/day-stretch.ts";
import { eligibilityDays } from "../counting/eligibility-day.ts";
import type { DayNumber, Instant } from "../days/day-number.ts";
import type { Zone } from "../days/zone.ts";
import { byTime } from "../timeline/note.ts";
import { stands } from "../timeline/timeline.ts";
import {
  catheterStretch,
  countsForTheWard,
  holds,
  standingCatheters,
  type WardStretch,
  wardStretches,
} from "../timeline/ward-stretches.ts";
import type { NecessityCatheter, NecessityNote, NecessityPatient, NecessityRules, NecessityStay } from "./facts.ts";

/** One catheter with where and when it was in place, as far as known at an instant. */
export interface CatheterPresence {
  readonly patientId: number;
  readonly stay: NecessityStay;
  /** Where the patient was in that stay, in order. */
  readonly places: readonly WardStretch[];
  readonly catheter: NecessityCatheter;
  /** From when to when it was in place within the stay; `end` is null while it is in, also when the stay lasts. */
  readonly start: Instant;
  readonly end: Instant | null;
  /** The facility days on which it was in place for any part. */
  readonly days: DayStretch;
  /** The first day of the stay on an inpatient ward; null when there was none yet. */
  readonly firstInpatientDay: DayNumber | null;
  /** Eligibility days of the patient: they go on from one catheter to the next. Empty for kinds that are not counted. */
  readonly eligibility: ReadonlyMap<DayNumber, number>;
  /** Notes about it that stand, in the order in which things happened. */
  readonly notes: readonly NecessityNote[];
  /** The reviews among them, by the facility day on which they happened. */
  readonly reviews: readonly NecessityNote[];
  readonly reviewsOn: ReadonlyMap<DayNumber, readonly NecessityNote[]>;
}

/** Every catheter of a patient that stands and had begun by `now`, of any kind, in the order of stays. */
export function catheterPresences(patient: NecessityPatient, rules: NecessityRules, now: Instant): CatheterPresence[] {
  const notes = notesByCatheter(patient.notes);
  const stays = patient.stays.filter(stands).map((stay) => {
    const places = wardStretches(stay);
    return { stay, places, inpatientDays: inpatientDaysOf(places, rules, now) };
  });
  const begun = stays.flatMap(({ stay, places, inpatientDays }) =>
    standingCatheters(stay).flatMap((catheter) => {
      const stretch = catheterStretch(stay, catheter);
      if (stretch === null || stretch.start > now) return [];
      const firstInpatientDay = inpatientDays[0] ?? null;
      const days = daysTouched(stretch, rules.zone, now);
      return [{ stay, places, catheter, ...stretch, days, firstInpatientDay }];
    }),
  );
  const indwelling = begun.filter(({ catheter }) => countsAsIndwelling(catheter.kind));
  const eligibility = eligibilityDays({
    catheterDays: indwelling.map(({ days }) => days),
    inpatientDays: stays.flatMap(({ inpatientDays }) => inpatientDays.map((day) => ({ first: day, last: day }))),
    dayExists: rules.dayExists,
  });
  return begun.map((one) => ({
    ...one,
    patientId: patient.patientId,
    eligibility: countsAsIndwelling(one.catheter.kind) ? eligibility : noDays,
    ...notesInOrder(notes.get(one.catheter.id) ?? [], rules.zone),
  }));
}

/**
 * The age of this catheter on a facility day. Where the insertion is unknown it is counted from the first inpatient day,
 * or from the day on which it was first known to be in place when the patient has not been on an inpatient ward by then.
 */
export function ageOn(
  { catheter, days, firstInpatientDay }: CatheterPresence,
  day: DayNumber,
  { zone, dayExists }: Pick<NecessityRules, "zone" | "dayExists">,
): CatheterAge {
  const insertedOn = catheter.insertedAt === null ? null : zone.dayOf(catheter.insertedAt);
  const known = firstInpatientDay !== null && firstInpatientDay <= day ? firstInpatientDay : days.first;
  return catheterAge({ day, insertedOn, firstInpatientDay: known, dayExists });
}

/** The ward that has the patient at an instant, or holds the bed during a procedure; null when none does. */
export function placeAt(places: readonly WardStretch[], at: Instant): WardStretch | null {
  const place = places.findLast((one) => holds(one, at));
  return place && countsForTheWard(place) ? place : null;
}

const noDays: ReadonlyMap<DayNumber, number> = new Map();

/** The facility days that a stretch of time touches up to `now`; one without length touches the day it lies on. */
function daysTouched({ start, end }: { start: Instant; end: Instant | null }, zone: Zone, now: Instant): DayStretch {
  const lastInstant = end !== null && end <= now ? Math.max(start, end - 1) : now;
  const [a, b] = [zone.dayOf(start), zone.dayOf(lastInstant)];
  // Where the clocks go back over midnight, a later instant has an earlier date.
  return { first: Math.min(a, b), last: Math.max(a, b) };
}

/** The days on which the patient was on an inpatient ward for any part, in order. */
function inpatientDaysOf(
  places: readonly WardStretch[],
  { zone, isInpatient }: NecessityRules,
  now: Instant,
): DayNumber[] {
  const days = new Set<DayNumber>();
  for (const place of places) {
    if (place.start > now || !countsForTheWard(place)) continue;
    const { first, last } = daysTouched(place, zone, now);
    for (let day = first; day <= last; day++) if (isInpatient(place.wardId, day)) days.add(day);
  }
  return [...days].sort((a, b) => a - b);
}

function notesByCatheter(notes: readonly NecessityNote[]): Map<number, NecessityNote[]> {
  const lists = new Map<number, NecessityNote[]>();
  for (const note of notes) {
    if (!stands(note)) continue;
    const list = lists.get(note.catheterId);
    if (list) list.push(note);
    else lists.set(note.catheterId, [note]);
  }
  return lists;
}

function notesInOrder(list: NecessityNote[], zone: Zone): Pick<CatheterPresence, "notes" | "reviews" | "reviewsOn"> {
  const notes = list.sort(byTime);
  const reviews = notes.filter(({ kind }) => kind === "review");
  const reviewsOn = new Map<DayNumber, NecessityNote[]>();
  for (const review of reviews) {
    const day = zone.dayOf(review.at);
    const known = reviewsOn.get(day);
    if (known) known.push(review);
    else reviewsOn.set(day, [review]);
  }
  return { notes, reviews, reviewsOn };
}
