import type { Instant } from "../days/day-number.ts";
import { checkStay } from "./check-stay.ts";
import { catheterOf } from "./find-entry.ts";
import { type PatientTimeline, revise, withEntry, withStay } from "./timeline.ts";

/**
 * Somebody saw the catheter in place. The latest such instant is kept.
 * Refuses `seen-after-removal` and `seen-before-insertion`.
 */
export function confirmCatheter(
  timeline: PatientTimeline,
  order: { catheterId: number; seenAt: Instant },
): PatientTimeline {
  const { stay, catheter } = catheterOf(timeline, order.catheterId);
  const asSeen = withStay(timeline, {
    ...stay,
    catheters: withEntry(stay.catheters, revise(catheter, { lastSeenAt: order.seenAt })),
  });
  checkStay(asSeen, stay.id);
  return catheter.lastSeenAt !== null && catheter.lastSeenAt >= order.seenAt ? timeline : asSeen;
}
