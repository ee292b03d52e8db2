import type { ReviewOutcome } from "../../../shared/catheter-words.ts";
import { countsAsIndwelling } from "../counting/counts-as-catheter-day.ts";
import { type DayNumber, dayMs, type Instant } from "../days/day-number.ts";
import type { PolicyInForce } from "../policy/policy-in-force.ts";
import { countsForTheWard, holds } from "../timeline/ward-stretches.ts";
import { type CatheterPresence, placeAt } from "./catheter-presence.ts";
import type { NecessityNote, NecessityRules } from "./facts.ts";

/**
 * `not-due`: none is owed that day and none was made. `due`: owed by an hour that has not passed. `asked`: the prescriber
 * was asked and has not answered. `done`: answered by the hour, or without being owed. `late`: answered after it.
 * `overdue`: the hour has passed, unanswered. `missed`: the day is over, unanswered.
 */
export type ReviewState = "not-due" | "due" | "asked" | "done" | "late" | "overdue" | "missed";

/** Why no review is owed. */
export type NotOwed = "other-kind" | "too-early" | "not-there";

/** The ward that owes a review, by when, and the policy that says so. */
export interface ReviewOwed {
  readonly wardId: number;
  readonly dueAt: Instant;
  readonly policy: PolicyInForce;
  /** The ward whose policy and hour it is: another one only when the patient was moved between the hours of both. */
  readonly policyWardId: number;
}

export interface ReviewOfDay {
  readonly state: ReviewState;
  readonly day: DayNumber;
  readonly eligibilityDay: number | null;
  /** What is owed, or why nothing is. */
  readonly owed: ReviewOwed | null;
  readonly notOwed: NotOwed | null;
  readonly answer: ReviewAnswer | null;
  /** When the prescriber was last asked that day, while nothing has answered it. */
  readonly askedAt: Instant | null;
}

/** The review that answered the question of a day: the first one that kept or removed. */
export interface ReviewAnswer {
  readonly noteId: number;
  readonly at: Instant;
  readonly outcome: Exclude<ReviewOutcome, "ask">;
  readonly writtenAt: Instant;
  /** Written down on a later facility day than the one on which it happened. */
  readonly writtenLate: boolean;
}

/**
 * The review of a catheter on a facility day, as it stood at `now`. Reviews are for indwelling urethral catheters on
 * inpatient wards. A review counts for the facility day on which it happened, wherever the patient was then.
 * Source: periodic, usually daily, review: SHEA/IDSA/APIC practice recommendations (Patel et al., Infect Control Hosp
 * Epidemiol 2023).
 */
export function reviewOfDay(
  presence: CatheterPresence,
  day: DayNumber,
  rules: NecessityRules,
  now: Instant,
): ReviewOfDay {
  const made = (presence.reviewsOn.get(day) ?? []).filter((review) => review.at <= now);
  const answer = answerOf(made, day, rules);
  const askedAt = answer ? null : (made.at(-1)?.at ?? null);
  const eligibilityDay = presence.eligibility.get(day) ?? null;
  const found = owedOn(presence, day, rules);
  const [owed, notOwed] = typeof found === "string" ? [null, found] : [found, null];
  const isOver = now >= rules.zone.firstInstantFrom((day + 1) * dayMs);
  const state = stateOf({ owed, answer, askedAt, isOver, now });
  return { state, day, eligibilityDay, owed, notOwed, answer, askedAt };
}

function answerOf(made: readonly NecessityNote[], day: DayNumber, { zone }: NecessityRules): ReviewAnswer | null {
  for (const { id: noteId, at, outcome, writtenAt } of made) {
    if (outcome !== "keep" && outcome !== "remove") continue;
    return { noteId, at, outcome, writtenAt, writtenLate: zone.dayOf(writtenAt) > day };
  }
  return null;
}

function stateOf({
  owed,
  answer,
  askedAt,
  isOver,
  now,
}: Pick<ReviewOfDay, "owed" | "answer" | "askedAt"> & { isOver: boolean; now: Instant }): ReviewState {
  if (answer) return owed && answer.at > owed.dueAt ? "late" : "done";
  if (owed && now > owed.dueAt) return isOver ? "missed" : "overdue";
  if (askedAt !== null) return "asked";
  return owed ? "due" : "not-due";
}

/**
 * What makes a review due: the catheter is in place, and the patient on an inpatient ward, at the hour of that ward's
 * policy, from the eligibility day on that the policy names. Of several wards of a day the first hour counts.
 */
function owedOn(presence: CatheterPresence, day: DayNumber, rules: NecessityRules): ReviewOwed | NotOwed {
  if (!countsAsIndwelling(presence.catheter.kind)) return "other-kind";
  const number = presence.eligibility.get(day);
  if (number === undefined) return "not-there";
  const hours = hoursThatCount(presence, day, rules).filter(({ dueAt }) => holds(presence, dueAt));
  if (hours.length === 0) return "not-there";
  return hours.find(({ policy }) => number >= policy.body.reviewFromDay) ?? "too-early";
}

/**
 * The hours of the day that find the patient on the ward whose hour it is, in order. A patient who is moved between the
 * different hours of two wards may be on neither at its own hour: then the later hour counts, on the ward where the
 * patient is by then, because moving must not make a day's review disappear.
 */
function hoursThatCount(presence: CatheterPresence, day: DayNumber, rules: NecessityRules): ReviewOwed[] {
  const hours = hoursOfWards(presence, day, rules);
  const own = hours.filter(({ wardId, policyWardId }) => wardId === policyWardId);
  return own.length > 0 ? own : hours.slice(-1);
}

/** The hour of each inpatient ward of the day with the ward on which the patient is then, if it is one for inpatients. */
function hoursOfWards({ places }: CatheterPresence, day: DayNumber, rules: NecessityRules): ReviewOwed[] {
  const { zone, isInpatient, policyOn } = rules;
  const dayStart = zone.firstInstantFrom(day * dayMs);
  const dayEnd = zone.firstInstantFrom((day + 1) * dayMs);
  const wardIds = new Set<number>();
  for (const place of places) {
    const touches = place.start < dayEnd && (place.end === null || place.end > dayStart);
    if (touches && countsForTheWard(place) && isInpatient(place.wardId, day)) wardIds.add(place.wardId);
  }
  const hours: ReviewOwed[] = [];
  for (const policyWardId of wardIds) {
    const policy = policyOn(policyWardId, day);
    const dueAt = dueInstant(policy.body.reviewDueAt, day, rules);
    const there = placeAt(places, dueAt);
    if (there && isInpatient(there.wardId, day)) hours.push({ wardId: there.wardId, dueAt, policy, policyWardId });
  }
  return hours.sort((a, b) => a.dueAt - b.dueAt);
}

/** The first instant at or after a local hour: an hour that the clocks skip is due when they have gone on. */
function dueInstant(hour: string, day: DayNumber, { zone }: NecessityRules): Instant {
  const timeMs = Number(hour.slice(0, 2)) * 3_600_000 + Number(hour.slice(3)) * 60_000;
  return zone.firstInstantFrom(day * dayMs + timeMs);
}
