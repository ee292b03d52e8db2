import type { Instant } from "../days/day-number.ts";
import type { NecessityRules } from "./facts.ts";
import type { NotOwed, ReviewOfDay } from "./review-of-day.ts";
import { clockTime, dayOfTime } from "./times-in-words.ts";

const outcomes = { keep: "still needed", remove: "decision: remove" } as const;

const whyNot: Readonly<Record<NotOwed, string>> = {
  "other-kind": "only indwelling urethral catheters are reviewed",
  "too-early": "it begins on a later eligibility day",
  "not-there": "at the hour at which it would be due, the catheter was not in place on an inpatient unit",
};

/** Why the review of a day has its state, in a sentence or two. */
export function reviewReason(review: ReviewOfDay, rules: Pick<NecessityRules, "zone" | "wardName">): string {
  const { answer, owed } = review;
  if (answer) {
    const late = answer.writtenLate ? ` It was entered on ${dayOfTime(rules.zone, answer.writtenAt)}.` : "";
    const due = review.state === "late" && owed ? `; it was due by ${dueText(owed.dueAt, review, rules)}` : "";
    return `Reviewed at ${clockTime(rules.zone, answer.at)}, ${outcomes[answer.outcome]}${due}.${late}`;
  }
  return `${openText(review, rules)}${askedText(review, rules)}`;
}

function openText(review: ReviewOfDay, rules: Pick<NecessityRules, "zone" | "wardName">): string {
  const { owed, notOwed, eligibilityDay } = review;
  if (!owed) return `No review is due: ${whyNot[notOwed ?? "not-there"]}.`;
  const day = `The review of eligibility day ${eligibilityDay}`;
  const by = `by ${dueText(owed.dueAt, review, rules)}`;
  if (review.state === "overdue") return `${day} was due ${by} and has not been made.`;
  if (review.state === "missed") return `${day} was due ${by} and was not made that day.`;
  return `${day} is due ${by}.`;
}

function dueText(
  dueAt: Instant,
  { owed }: ReviewOfDay,
  { zone, wardName }: Pick<NecessityRules, "zone" | "wardName">,
): string {
  return owed ? `${clockTime(zone, dueAt)} on unit ${wardName(owed.wardId)}` : clockTime(zone, dueAt);
}

function askedText({ askedAt }: ReviewOfDay, { zone }: Pick<NecessityRules, "zone">): string {
  return askedAt === null ? "" : ` The provider was contacted at ${clockTime(zone, askedAt)} and has not answered.`;
}
