import type { Instant } from "../days/day-number.ts";
import type { Catheter } from "./timeline.ts";

/**
 * The last instant by `until` at which somebody had the catheter in sight: put it in, saw it, or wrote a note about it.
 * Null when nobody did, as with one found in place on arrival of which no more was recorded.
 */
export function lastSeen(
  { insertedAt, lastSeenAt, noted }: Pick<Catheter, "insertedAt" | "lastSeenAt" | "noted">,
  until: Instant = Number.POSITIVE_INFINITY,
): Instant | null {
  const seen = [insertedAt, lastSeenAt, noted?.first, noted?.last].filter((at) => at != null && at <= until);
  return seen.length === 0 ? null : Math.max(...(seen as Instant[]));
}
