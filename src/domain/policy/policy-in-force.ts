import type { PolicyBody } from "../../../shared/policy.ts";
import type { DayNumber, Instant } from "../days/day-number.ts";
import { defaultPolicy } from "./default-policy.ts";

/** What the facility or one ward wants done from a day on. None is ever changed: a new one is added. */
export interface PolicyVersion {
  readonly id: number;
  /** null: the facility's own. */
  readonly wardId: number | null;
  /** Counts the versions of this ward's or the facility's policy, in the order in which they were recorded. */
  readonly number: number;
  readonly fromDay: DayNumber;
  /** null: back to the level above. */
  readonly body: PolicyBody | null;
  readonly recordedAt: Instant;
  readonly recordedBy: number;
  readonly reason: string;
}

/** The policy that holds somewhere on a day, and which one it is. */
export interface PolicyInForce {
  readonly body: PolicyBody;
  /** 0 is the policy that is built in. */
  readonly number: number;
  /** null: the facility's own, or the one that is built in. */
  readonly wardId: number | null;
  /** null: built in, and without a beginning. */
  readonly fromDay: DayNumber | null;
}

/** What holds when nobody has set anything. */
export const builtInPolicy: PolicyInForce = { body: defaultPolicy, number: 0, wardId: null, fromDay: null };

/**
 * The policy in force on a ward on a day: the ward's own, else the facility's (which is also meant by `wardId` null),
 * else the built-in one. Versions may come in any order.
 *
 * Of each level the version counts that began last by that day; of several with the same first day the highest number.
 * So a version holds from its first day until the day on which the next one begins, whenever each was recorded: one that
 * is recorded later with an earlier first day fills the days before and does not end what was planned for later. To
 * change what is planned, a version with the same first day is added.
 */
export function policyInForce(
  versions: readonly PolicyVersion[],
  wardId: number | null,
  day: DayNumber,
): PolicyInForce {
  const ofWard = wardId === null ? null : latestOf(versions, wardId, day);
  return ofWard ?? latestOf(versions, null, day) ?? builtInPolicy;
}

/** The version of one level that counts on a day; null when there is none, or when it gives way to the level above. */
function latestOf(versions: readonly PolicyVersion[], wardId: number | null, day: DayNumber): PolicyInForce | null {
  let latest: PolicyVersion | null = null;
  for (const version of versions) {
    if (version.wardId !== wardId || version.fromDay > day) continue;
    if (latest === null || isAfter(version, latest)) latest = version;
  }
  if (latest === null || latest.body === null) return null;
  const { body, number, fromDay } = latest;
  return { body, number, wardId, fromDay };
}

function isAfter(a: PolicyVersion, b: PolicyVersion): boolean {
  return a.fromDay === b.fromDay ? a.number > b.number : a.fromDay > b.fromDay;
}
