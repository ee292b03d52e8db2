import type { DayNumber } from "../../domain/days/day-number.ts";
import type { NecessityPatient, NecessityRules } from "../../domain/necessity/facts.ts";
import { notesOf } from "../../store/notes.ts";
import type { Read } from "../../store/store.ts";
import { loadTimelines } from "../../store/timelines.ts";
import { groupedBy } from "../grouped-by.ts";
import { type FacilityRules, loadCountingRules } from "../months/counting-rules.ts";
import { loadPolicies, type PolicyOn } from "../settings/load-policy.ts";

/** What holds in a facility for judging need and care, on the days from `first` to `last`; only of these wards when given. */
export async function necessityRules(
  read: Read,
  facilityId: number,
  days: (zone: NecessityRules["zone"]) => { first: DayNumber; last: DayNumber },
  wardIds?: readonly number[],
): Promise<NecessityRules & FacilityRules & { readonly policyOn: PolicyOn }> {
  const rules = await loadCountingRules(read, facilityId, days, wardIds);
  const policyOn = await loadPolicies(read, facilityId);
  const codes = new Map(rules.wards.map(({ id, code }) => [id, code]));
  return {
    ...rules,
    dayExists: (day) => rules.zone.startOfDay(day) !== null,
    policyOn,
    wardName: (wardId) => codes.get(wardId) ?? String(wardId),
  };
}

/** Everything recorded of these surviving patients, with the notes about their catheters. */
export async function necessityPatients(
  read: Read,
  survivorIds: readonly number[],
  options: { reviewsOnly?: boolean } = {},
): Promise<NecessityPatient[]> {
  const timelines = [...(await loadTimelines(read, survivorIds)).values()];
  const catheterIds = timelines.flatMap(({ stays }) => stays.flatMap((stay) => stay.catheters.map(({ id }) => id)));
  const byCatheter = groupedBy(await notesOf(read, catheterIds, options), ({ catheterId }) => catheterId);
  return timelines.map((timeline) => ({
    ...timeline,
    notes: timeline.stays.flatMap((stay) => stay.catheters.flatMap(({ id }) => byCatheter.get(id) ?? [])),
  }));
}
