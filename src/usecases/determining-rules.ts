import { determineByWard, type FamilyOf, type PlacedDetermination } from "../domain/cultures/determine-by-ward.ts";
import { familyOfWards } from "../domain/cultures/family-of-wards.ts";
import { type CultureRecord, type ReadingOfRecord, surveillanceOf } from "../domain/cultures/surveillance-of.ts";
import type { DayNumber } from "../domain/days/day-number.ts";
import { scopesOfFacility } from "../store/scopes.ts";
import type { Read } from "../store/store.ts";
import { loadWayRules } from "./way-rules.ts";

/** What determinations of a facility rest on beside the patient's record. */
export interface DeterminingRules extends ReadingOfRecord {
  readonly familyOf: FamilyOf;
}

/** Loads what each ward is, and by whose definitions it is watched. */
export async function loadDeterminingRules(read: Read, facilityId: number): Promise<DeterminingRules> {
  const rules = await loadWayRules(read, facilityId);
  return { ...rules, familyOf: familyOfWards(await scopesOfFacility(read, facilityId)) };
}

/** What a patient's cultures are determined to be, of a record that is known up to a day. */
export function determinedOf(
  record: CultureRecord,
  rules: DeterminingRules,
  knownThrough: DayNumber,
): PlacedDetermination[] {
  return determineByWard(surveillanceOf(record, rules, knownThrough), rules.familyOf);
}
