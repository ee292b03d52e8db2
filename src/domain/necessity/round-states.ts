import { indicationLabel, type PolicyRule } from "../../../shared/policy-rules.ts";
import { type RoundState, roundState } from "../../../shared/round-states.ts";
import { countsAsIndwelling } from "../counting/counts-as-catheter-day.ts";
import type { Instant } from "../days/day-number.ts";
import type { PolicyInForce } from "../policy/policy-in-force.ts";
import { type NamedPolicy, namedPolicy } from "../policy/policy-sentences.ts";
import { hasNoHour } from "../timeline/timeline.ts";
import type { CatheterPresence } from "./catheter-presence.ts";
import type { Confirmation } from "./confirmation.ts";
import type { NecessityNote, NecessityRules } from "./facts.ts";
import type { IndicationInForce } from "./indication-in-force.ts";
import type { ReviewOfDay } from "./review-of-day.ts";
import { reviewReason } from "./review-reason.ts";
import { thresholdOn } from "./threshold.ts";
import { dayAndTime, dayOfTime } from "./times-in-words.ts";

/** Something that a row says about its catheter: what, why, and by which policy. */
export interface RoundFlag {
  readonly state: RoundState;
  readonly reason: string;
  readonly policy: NamedPolicy;
}

/** The place of a state among what needs doing: the lower, the sooner. */
export function urgency(state: RoundState): number {
  return roundState.options.indexOf(state);
}

/** All that the states of one catheter depend on. */
export interface StateFacts {
  readonly presence: CatheterPresence;
  readonly at: Instant;
  /** Of the ward whose round it is. */
  readonly policy: PolicyInForce;
  readonly review: ReviewOfDay;
  readonly indication: IndicationInForce | null;
  readonly confirmation: Confirmation;
  readonly rules: Pick<NecessityRules, "zone" | "wardName">;
}

/** The states of a catheter with reasons and policies, the most urgent first. */
export function roundStates(facts: StateFacts): RoundFlag[] {
  const ofKind = countsAsIndwelling(facts.presence.catheter.kind)
    ? [...reviewFlags(facts), ...decisionFlags(facts), ...thresholdFlags(facts), ...indicationFlags(facts)]
    : [];
  return [...ofKind, ...doubtFlags(facts)].sort((a, b) => urgency(a.state) - urgency(b.state));
}

function flag(
  facts: StateFacts,
  state: RoundState,
  rule: PolicyRule,
  reason: string,
  policy = facts.policy,
): RoundFlag {
  return { state, reason, policy: namedPolicy(policy, rule, facts.rules.wardName) };
}

function reviewFlags(facts: StateFacts): RoundFlag[] {
  const { review, rules } = facts;
  if (review.state === "not-due") return [];
  return [flag(facts, review.state, "review", reviewReason(review, rules), review.owed?.policy)];
}

/** What the reviews up to now have left open: a question without an answer, or a decision that was not carried out. */
function decisionFlags(facts: StateFacts): RoundFlag[] {
  const { presence, at, review, rules } = facts;
  const made = presence.reviews.filter((review) => review.at <= at);
  const last = made.at(-1);
  const decided = made.findLast(({ outcome }) => outcome !== "ask");
  const when = (note: NecessityNote) => dayAndTime(rules.zone, note.at);
  const flags: RoundFlag[] = [];
  // Asked today before the hour: the day's review says so itself.
  if (last?.outcome === "ask" && review.state !== "asked")
    flags.push(flag(facts, "asked", "review", `The provider was contacted at ${when(last)} and has not answered.`));
  if (decided?.outcome === "remove") {
    const reason = `The review of ${when(decided)} decided to remove it, and it is still in place.`;
    flags.push(flag(facts, "removal-decided", "review", reason));
  }
  return flags;
}

function thresholdFlags(facts: StateFacts): RoundFlag[] {
  const { review, indication, policy } = facts;
  const { daysPast, thresholdDays, ofIndication } = thresholdOn(
    review.eligibilityDay,
    indication?.code ?? null,
    policy.body,
  );
  if (daysPast === 0) return [];
  const whose = ofIndication && indication ? ` of "${indicationLabel(policy.body, indication.code)}"` : "";
  const reason = `Eligibility day ${review.eligibilityDay} is past the threshold${whose}, day ${thresholdDays}.`;
  return [flag(facts, "past-threshold", "threshold", reason)];
}

function indicationFlags(facts: StateFacts): RoundFlag[] {
  const { indication, policy } = facts;
  if (indication === null) return [flag(facts, "indication-missing", "indications", "No indication was recorded.")];
  if (indication.accepted) return [];
  const reason = `"${indicationLabel(policy.body, indication.code)}" is not an indication that the policy accepts.`;
  return [flag(facts, "indication-outside", "indications", reason)];
}

function doubtFlags(facts: StateFacts): RoundFlag[] {
  const { presence, confirmation, rules } = facts;
  const { doubtful, doubtfulFrom, lastSeenAt, seenWithoutHour } = confirmation;
  if (!doubtful || doubtfulFrom === null) return [];
  const isUnseen = lastSeenAt === null || lastSeenAt < presence.start;
  const noHour = isUnseen ? hasNoHour(presence.stay, "admittedAt") : seenWithoutHour;
  const when = (at: Instant) => (noHour ? dayOfTime(rules.zone, at) : dayAndTime(rules.zone, at));
  const seen = isUnseen
    ? `No sighting is recorded since the admission ${noHour ? "on" : "at"} ${when(presence.start)}`
    : `It was last confirmed in place ${noHour ? "on" : "at"} ${when(lastSeenAt)}`;
  const hour = noHour ? ", hour not recorded" : "";
  const reason = `${seen}${hour}; from ${when(doubtfulFrom)} on it is doubtful whether it is in place.`;
  return [flag(facts, "doubtful", "confirmation", reason)];
}
