import type { ReviewOutcome } from "../../shared/catheter-words.ts";
import { countsAsIndwelling } from "../domain/counting/counts-as-catheter-day.ts";
import { dayMs, type Instant } from "../domain/days/day-number.ts";
import type { Zone } from "../domain/days/zone.ts";
import { type DemoCatheter, type DemoReview, legAt } from "./course.ts";
import type { Draw } from "./draw.ts";
import { drawIndication } from "./draw-catheters.ts";
import type { Leg } from "./patient-path.ts";
import { type DemoPolicy, dueOn } from "./policies.ts";

const minuteMs = 60_000;
const hourMs = 60 * minuteMs;

/** What reviews depend on beside their catheter. */
export interface ReviewsOf {
  readonly legs: readonly Leg[];
  readonly zone: Zone;
  readonly now: Instant;
  readonly policies: readonly DemoPolicy[];
}

/**
 * The reviews of a catheter up to now: on most days by the hour, sometimes late, sometimes not at all; now and then the
 * prescriber is asked first. Most are written down at once, a few many hours later.
 */
export function drawReviews(draw: Draw, catheter: DemoCatheter, given: ReviewsOf): DemoReview[] {
  const { legs, zone, now, policies } = given;
  if (!countsAsIndwelling(catheter.kind)) return [];
  const last = Math.min(catheter.gone, now);
  const reviews: DemoReview[] = [];
  for (let day = zone.dayOf(catheter.start) + 1; day <= zone.dayOf(last); day++) {
    const noon = zone.firstInstantFrom(day * dayMs + dayMs / 2);
    const ward = legAt(legs, Math.min(noon, last - 1))?.ward;
    if (ward?.setting !== "inpatient") continue;
    const due = dueOn(policies, { ward: ward.code, day, zone });
    const at = reviewTime(draw, { due, compliance: ward.compliance, dayStart: zone.firstInstantFrom(day * dayMs) });
    const soon = catheter.removed !== null && catheter.removed - (at ?? noon) < 14 * hourMs;
    if (at === null) continue;
    const reason = catheter.indication ?? drawIndication(draw, ward) ?? "other";
    const made = answered(draw, { at, soon, reason, last });
    reviews.push(...made.map((review) => ({ ...review, written: Math.min(review.written, now) })));
  }
  return reviews;
}

/** When the review of a day is made; null when it is not. */
function reviewTime(
  draw: Draw,
  { due, compliance, dayStart }: { due: Instant; compliance: number; dayStart: Instant },
): Instant | null {
  const made = draw.fraction();
  const before = draw.whole(5, 240);
  const after = draw.whole(10, 280);
  if (made < compliance) return Math.max(dayStart, due - before * minuteMs);
  // What is late is late on its own day.
  return made < compliance + 0.07 ? Math.min(due + after * minuteMs, dayStart + 23 * hourMs) : null;
}

/** A review, or the question to the prescriber and what came of it. None reaches beyond `last`. */
function answered(
  draw: Draw,
  { at, soon, reason, last }: { at: Instant; soon: boolean; reason: string; last: Instant },
): DemoReview[] {
  const asks = draw.chance(soon ? 0.25 : 0.05);
  const outcome = soon && draw.chance(0.75) ? "remove" : "keep";
  const answer = at + draw.whole(20, 150) * minuteMs;
  const answers = draw.chance(0.85);
  const notes = draw.chance(0.1);
  const written = (then: Instant) =>
    then + (draw.chance(0.03) ? draw.whole(5 * 60, 14 * 60) : draw.whole(0, 25)) * minuteMs;
  const review = (then: Instant, what: ReviewOutcome): DemoReview => ({
    ...{ at: then, outcome: what, indication: what === "keep" ? reason : null },
    ...{ note: notes && what === "ask" ? "Left a message with the team" : null, written: written(then) },
  });
  const reviews = asks ? [review(at, "ask"), ...(answers ? [review(answer, outcome)] : [])] : [review(at, outcome)];
  return reviews.filter((one) => one.at < last);
}
