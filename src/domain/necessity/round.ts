import { compareBeds } from "../../../shared/bed-order.ts";
import type { CatheterKind } from "../../../shared/vocabulary.ts";
import type { CatheterAge } from "../counting/catheter-age.ts";
import { countsAsIndwelling } from "../counting/counts-as-catheter-day.ts";
import type { DayNumber, Instant } from "../days/day-number.ts";
import { hasNoHour } from "../timeline/timeline.ts";
import { holds } from "../timeline/ward-stretches.ts";
import { ageOn, type CatheterPresence, catheterPresences, placeAt } from "./catheter-presence.ts";
import { confirmationAt } from "./confirmation.ts";
import type { NecessityPatient, NecessityRules } from "./facts.ts";
import { type IndicationInForce, indicationInForce } from "./indication-in-force.ts";
import { reviewOfDay } from "./review-of-day.ts";
import { type RoundFlag, roundStates, urgency } from "./round-states.ts";

/** What rounds are made of. */
export interface RoundFacts {
  readonly day: DayNumber;
  /** The instant that the round is shown as of: now, or the end of a day that is over. */
  readonly at: Instant;
  /** From when the day's review is looked back on: the end of a day that is over; `at` when left out. */
  readonly judgedAt?: Instant;
  /** At least every patient who was on the wards at that instant. */
  readonly patients: readonly NecessityPatient[];
  readonly rules: NecessityRules;
}

/** One catheter of a ward. */
export interface RoundRow {
  readonly bed: string | null;
  readonly patientId: number;
  readonly stayId: number;
  readonly catheterId: number;
  readonly kind: CatheterKind;
  readonly insertedAt: Instant | null;
  readonly inPlaceOnArrival: boolean;
  /** Goes on across an exchange. Null for kinds that are not counted, and off inpatient wards. */
  readonly eligibilityDay: number | null;
  readonly age: CatheterAge;
  readonly indication: IndicationInForce | null;
  readonly lastSeenAt: Instant | null;
  /** Which of the times above have no hour: only the day is known. */
  readonly noHour: readonly ("insertedAt" | "lastSeenAt")[];
  /** By when the day's review is due; null when none is. */
  readonly dueAt: Instant | null;
  /** What needs doing first comes first. */
  readonly states: readonly RoundFlag[];
}

/**
 * The catheters in place on a ward at an instant, also while a bed is held, with what is due. Sorted by what needs doing
 * first, then by bed, then by number. Kinds without reviews are listed without their states.
 */
export function roundOf({ wardId, ...facts }: RoundFacts & { readonly wardId: number }): RoundRow[] {
  return roundsOf(facts, [wardId]).get(wardId) ?? [];
}

/** The rounds of several wards, each as {@link roundOf} gives it, in one pass over the patients. */
export function roundsOf(facts: RoundFacts, wardIds: readonly number[]): ReadonlyMap<number, RoundRow[]> {
  const rounds = new Map(wardIds.map((id): [number, RoundRow[]] => [id, []]));
  for (const patient of facts.patients) {
    for (const presence of catheterPresences(patient, facts.rules, facts.at)) {
      const place = placeAt(presence.places, facts.at);
      const rows = place && rounds.get(place.wardId);
      if (!rows || !holds(presence, facts.at)) continue;
      const bed = presence.stay.wardStays.find(({ id }) => id === place.wardStayId)?.bed ?? null;
      rows.push(rowOf(presence, { wardId: place.wardId, bed }, facts));
    }
  }
  for (const rows of rounds.values())
    rows.sort((a, b) => urgencyOf(a) - urgencyOf(b) || compareBeds(a.bed, b.bed) || a.catheterId - b.catheterId);
  return rounds;
}

function rowOf(
  presence: CatheterPresence,
  { wardId, bed }: { readonly wardId: number; readonly bed: string | null },
  facts: RoundFacts,
): RoundRow {
  const { day, at, rules } = facts;
  const { catheter, patientId, stay } = presence;
  const policy = rules.policyOn(wardId, day);
  const review = reviewOfDay(presence, day, rules, facts.judgedAt ?? at);
  const indication = countsAsIndwelling(catheter.kind) ? indicationInForce(presence, at, policy.body) : null;
  const confirmation = confirmationAt(presence, at, policy.body);
  const eligibilityDay = review.eligibilityDay;
  return {
    ...{ bed, patientId, stayId: stay.id, catheterId: catheter.id, eligibilityDay, indication },
    kind: catheter.kind,
    insertedAt: catheter.insertedAt,
    inPlaceOnArrival: catheter.inPlaceOnArrival,
    age: ageOn(presence, day, rules),
    lastSeenAt: confirmation.lastSeenAt,
    noHour: [
      ...(hasNoHour(catheter, "insertedAt") ? (["insertedAt"] as const) : []),
      ...(confirmation.seenWithoutHour ? (["lastSeenAt"] as const) : []),
    ],
    dueAt: review.owed?.dueAt ?? null,
    states: roundStates({ presence, at, policy, review, indication, confirmation, rules }),
  };
}

/** A row with nothing to say comes last. */
function urgencyOf({ states: [first] }: RoundRow): number {
  return first ? urgency(first.state) : Number.MAX_SAFE_INTEGER;
}
