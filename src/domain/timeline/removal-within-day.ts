import { dayMs, type Instant } from "../days/day-number.ts";
import { instantOfDay } from "../days/local-time.ts";
import type { Zone } from "../days/zone.ts";
import { type Catheter, hasNoHour, revise, type Stay } from "./timeline.ts";
import { catheterStretch } from "./ward-stretches.ts";

/** How a removal is recorded: at one instant, or between two. */
export type RemovalTimes = Pick<Catheter, "removedAt" | "removedAfterAt" | "removedBeforeAt">;

/** What says when a catheter was in place. */
type Evidence = Partial<Pick<Catheter, "insertedAt" | "lastSeenAt" | "noted">>;

/** The mark of a removal of which the day alone is known. */
export const noHourOfRemoval = "no-hour:removedAt";

/**
 * A removal of which the day alone is known, `at` an instant at its beginning: between the last time of that day at which
 * the catheter is known to have been in place, or else the beginning of the day, and the end of the day (`now`, on a day
 * that is not over).
 */
export function removalWithinDay(
  at: Instant,
  evidence: readonly (Evidence | undefined)[],
  { zone, now }: { readonly zone: Zone; readonly now: Instant },
): RemovalTimes {
  const dayEnd = zone.firstInstantFrom((zone.dayOf(at) + 1) * dayMs) - 1;
  const latest = Math.max(at, Math.min(dayEnd, now));
  const inPlace = evidence.flatMap((one) => [one?.insertedAt, one?.lastSeenAt, one?.noted?.last]);
  const ofDay = inPlace.filter((one): one is Instant => one != null && one >= at && one <= latest);
  return { removedAt: null, removedAfterAt: Math.max(at, ...ofDay), removedBeforeAt: latest };
}

/**
 * The catheter with a removal of which the day alone is known after all that says by now that it was in place on that day.
 * Any other catheter as it is, and one for which this changes nothing.
 */
export function withRemovalFollowing(catheter: Catheter, zone: Zone): Catheter {
  const { removedBeforeAt: before, removedAfterAt } = catheter;
  if (!hasNoHour(catheter, "removedAt") || before === null) return catheter;
  const at = instantOfDay(zone.dayOf(before), zone) ?? before;
  const after = removalWithinDay(at, [catheter], { zone, now: before }).removedAfterAt;
  return after === removedAfterAt ? catheter : revise(catheter, { removedAfterAt: after });
}

/** When a catheter was in place, or may have been on the day of a removal without an hour; null when never in the stay. */
export function mayBeInPlace(
  stay: Pick<Stay, "admittedAt" | "dischargedAt">,
  catheter: Catheter,
): ReturnType<typeof catheterStretch> {
  const { removedBeforeAt: before } = catheter;
  const isOpen = hasNoHour(catheter, "removedAt") && before !== null;
  return catheterStretch(stay, isOpen ? { ...catheter, removedAfterAt: before } : catheter);
}
