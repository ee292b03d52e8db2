import type { PolicyBody } from "../../../shared/policy.ts";
import type { Instant } from "../days/day-number.ts";
import { lastSeen } from "../timeline/last-seen.ts";
import { hasNoHour } from "../timeline/timeline.ts";
import type { CatheterPresence } from "./catheter-presence.ts";

/** Whether somebody has seen a catheter lately. */
export interface Confirmation {
  /** When somebody last put it in, saw it or wrote about it; null when nobody has since the patient came with it. */
  readonly lastSeenAt: Instant | null;
  /** Only the day of that time is known. */
  readonly seenWithoutHour: boolean;
  /** From when on it is doubtful; null when its removal is recorded. */
  readonly doubtfulFrom: Instant | null;
  /** Whether it is doubtful at the instant that was asked for. */
  readonly doubtful: boolean;
}

const hourMs = 3_600_000;

/**
 * What is known at an instant about a catheter that is in place by the record. One that nobody has seen for the hours
 * of the policy is doubtful: perhaps it is out and nobody wrote it down. Who came with a catheter had it on admission.
 * Forgotten removals are the commonest cause of wrong catheter-days: common practice.
 */
export function confirmationAt(
  { catheter, start, notes }: Pick<CatheterPresence, "catheter" | "start" | "notes">,
  at: Instant,
  { confirmationHours }: Pick<PolicyBody, "confirmationHours">,
): Confirmation {
  const seen = [lastSeen(catheter, at), notes.findLast((note) => note.at <= at)?.at].filter((one) => one != null);
  const lastSeenAt = seen.length === 0 ? null : Math.max(...seen);
  const noted = notes.some((note) => note.at === lastSeenAt);
  const seenWithoutHour =
    !noted &&
    (["insertedAt", "lastSeenAt"] as const).some((one) => catheter[one] === lastSeenAt && hasNoHour(catheter, one));
  const isOut = catheter.removedAt !== null || catheter.removedAfterAt !== null;
  const doubtfulFrom = isOut ? null : Math.max(start, lastSeenAt ?? start) + confirmationHours * hourMs;
  return { lastSeenAt, seenWithoutHour, doubtfulFrom, doubtful: doubtfulFrom !== null && at >= doubtfulFrom };
}
