import type { Instant } from "../domain/days/day-number.ts";
import type { PatientTimeline, Stay } from "../domain/timeline/timeline.ts";
import { type OwnedStay, ownedStays } from "./owned-stays.ts";
import { stayIds } from "./stay-ids.ts";
import type { Read } from "./store.ts";

export type { OwnedStay } from "./owned-stays.ts";

/** Everything recorded about a patient, over all stays, with those of the patients merged into it. */
export async function loadTimeline(read: Read, survivorId: number): Promise<PatientTimeline> {
  const timelines = await loadTimelines(read, [survivorId]);
  return timelines.get(survivorId) ?? { patientId: survivorId, stays: [] };
}

/** Timelines of many surviving patients, by patient. A patient without stays has an empty one. */
export async function loadTimelines(read: Read, survivorIds: readonly number[]): Promise<Map<number, PatientTimeline>> {
  const owned = await ownedStays(read, "survivor", survivorIds);
  const stays = new Map<number, Stay[]>(survivorIds.map((id) => [id, []]));
  for (const { survivorId, stay } of owned) stays.get(survivorId)?.push(stay);
  return new Map([...stays].map(([patientId, list]) => [patientId, { patientId, stays: list }]));
}

/**
 * The stays that had begun by then and have not ended: what a report counts beside the ledger. Only those that were on
 * one of `wardIds` when given.
 */
export async function openStays(
  read: Read,
  facilityId: number,
  { until, wardIds }: { until: Instant; wardIds?: readonly number[] | undefined },
): Promise<OwnedStay[]> {
  const ids = await stayIds(read, { facilityId, admittedBefore: until + 1, endedFrom: null, wardIds });
  return ownedStays(read, "stay", ids);
}

/** The stays that touch a stretch of time. Only those that were on one of `wardIds` when given. */
export async function staysBetween(
  read: Read,
  facilityId: number,
  { start, end, wardIds }: { start: Instant; end: Instant; wardIds?: readonly number[] | undefined },
): Promise<OwnedStay[]> {
  const ids = await stayIds(read, { facilityId, admittedBefore: end, endedFrom: start, wardIds });
  return ownedStays(read, "stay", ids);
}
