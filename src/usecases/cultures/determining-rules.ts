import { determineByWard, type FamilyOf, type PlacedDetermination } from "../../domain/cultures/determine-by-ward.ts";
import { familyOfWards, type WatchedMonths } from "../../domain/cultures/family-of-wards.ts";
import { mayCount } from "../../domain/cultures/may-count.ts";
import { type CultureRecord, type ReadingOfRecord, surveillanceOf } from "../../domain/cultures/surveillance-of.ts";
import type { DayNumber } from "../../domain/days/day-number.ts";
import type { ReadOn } from "../../domain/editions/readings.ts";
import { readOnOf } from "../../store/chosen-readings.ts";
import { scopesOfFacility } from "../../store/scopes.ts";
import type { Read } from "../../store/store.ts";
import { loadWayRules } from "./way-rules.ts";

/** What determinations of a facility rest on beside the patient's record. */
export interface DeterminingRules extends ReadingOfRecord {
  readonly familyOf: FamilyOf;
  readonly scopes: readonly WatchedMonths[];
  /** How editions are read here on each day. */
  readonly readOn: ReadOn;
}

/** Loads what each ward is, and by whose definitions it is watched, and the readings chosen here. */
export async function loadDeterminingRules(read: Read, facilityId: number): Promise<DeterminingRules> {
  const rules = await loadWayRules(read, facilityId);
  const scopes = await scopesOfFacility(read, facilityId);
  const readOn = await readOnOf(read, facilityId);
  return { ...rules, scopes, familyOf: familyOfWards(scopes), readOn };
}

/** What a patient's cultures are determined to be, of a record that is known up to a day. */
export function determinedOf(
  record: CultureRecord,
  rules: DeterminingRules,
  knownThrough: DayNumber,
): PlacedDetermination[] {
  const timeline = surveillanceOf(record, rules, knownThrough);
  const determined = determineByWard(timeline, rules.familyOf, rules.readOn);
  const events = new Map(determined.map(({ determination: { subject, event } }) => [subject.id, event]));
  return determined.map((one) => {
    const { subject, event, repeatOf } = one.determination;
    const known = [event, (repeatOf && events.get(repeatOf.id)) ?? null];
    return { ...one, mayCount: mayCount(timeline, { subject, events: known }, rules.scopes, rules.readOn) };
  });
}
