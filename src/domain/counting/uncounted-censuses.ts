import { type CensusTable, censusesWithin } from "../days/census.ts";
import type { DayNumber, Instant } from "../days/day-number.ts";
import type { CountedStay } from "../timeline/counted-timeline.ts";
import { stands, wardStaysInOrder } from "../timeline/timeline.ts";
import { countsForTheWard, holds, type WardStretch, wardStretches } from "../timeline/ward-stretches.ts";

/** A census during a stay at which the patient was counted on no inpatient ward, with no reason recorded. */
export interface UncountedCensus {
  /**
   * `no-ward`: no ward is recorded for that time. `outpatient`: an outpatient or procedure area between two inpatient
   * wards, which no person confirmed.
   */
  readonly kind: "no-ward" | "outpatient";
  readonly day: DayNumber;
  readonly stayId: number;
  /** The inpatient wards of the stay before and after: the day may belong to one of them. Null where there is none. */
  readonly lastWardId: number | null;
  readonly nextWardId: number | null;
}

/** What finding them takes. */
export interface UncountedRules {
  readonly census: CensusTable;
  readonly isInpatient: (wardId: number, day: DayNumber) => boolean;
  /** Whether the setting of the ward was known on that day. Days of other wards are missing for that reason already. */
  readonly isDescribed: (wardId: number, day: DayNumber) => boolean;
}

/**
 * The censuses of a stay at which a patient-day may be missing, in the order of days, up to `now`. Every census of a stay
 * is one of four: a patient-day; accounted for (leave, or a confirmed outpatient or procedure area); on a ward whose
 * setting is unknown; or one of these. An outpatient or procedure area before the first inpatient ward or after the last
 * one is accounted for: emergency departments and discharge areas hold no inpatient bed.
 * Source: patients housed overnight in inpatient locations are counted: CDC Patient Safety Component Manual, chapter 7
 * (from memory).
 */
export function uncountedCensuses(stay: CountedStay, rules: UncountedRules, now: Instant): UncountedCensus[] {
  if (!stands(stay) || stay.admittedAt > now) return [];
  const { census } = rules;
  const range = censusesWithin(census, stay.admittedAt, Math.max(stay.admittedAt, stay.dischargedAt ?? now + 1));
  const places = wardStretches(stay);
  const found: UncountedCensus[] = [];
  for (let i = range.from; i < range.to; i++) {
    const at = census.instants[i] as Instant;
    const day = census.days[i] as DayNumber;
    const place = places.find((stretch) => holds(stretch, at));
    if (place && isAccountedFor(place, day, rules)) continue;
    const wards = inpatientAround(stay, { at, day }, rules);
    if (place === undefined || place.kind === "unknown")
      found.push({ kind: "no-ward", day, stayId: stay.id, ...wards });
    else if (wards.lastWardId !== null && wards.nextWardId !== null && !isConfirmed(stay, { at, day }, rules))
      found.push({ kind: "outpatient", day, stayId: stay.id, ...wards });
  }
  return found;
}

/** A patient-day, leave, a confirmed outpatient area, or a ward whose setting is not known. */
function isAccountedFor(place: WardStretch, day: DayNumber, { isInpatient, isDescribed }: UncountedRules): boolean {
  if (place.kind === "leave" || place.kind === "outpatient") return true;
  if (!countsForTheWard(place)) return false;
  return isInpatient(place.wardId, day) || (place.kind === "ward" && !isDescribed(place.wardId, day));
}

interface CensusOfDay {
  readonly at: Instant;
  readonly day: DayNumber;
}

function inpatientAround(stay: CountedStay, { at, day }: CensusOfDay, { isInpatient }: UncountedRules) {
  const inpatient = wardStaysInOrder(stay).filter(({ wardId }) => isInpatient(wardId, day));
  return {
    lastWardId: inpatient.findLast(({ startAt }) => startAt <= at)?.wardId ?? null,
    nextWardId: inpatient.find(({ startAt }) => startAt > at)?.wardId ?? null,
  };
}

/** Whether a person recorded, since the last inpatient ward, that the patient was in an outpatient or procedure area. */
function isConfirmed(stay: CountedStay, { at, day }: CensusOfDay, { isInpatient }: UncountedRules): boolean {
  const before = wardStaysInOrder(stay).filter(({ startAt }) => startAt <= at);
  const last = before.findLastIndex(({ wardId }) => isInpatient(wardId, day));
  return before.slice(Math.max(0, last)).some(({ absenceAfter }) => absenceAfter === "outpatient");
}
