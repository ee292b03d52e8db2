import { type LaboratoryWords, laboratoryWords } from "../../domain/cultures/laboratory-words.ts";
import type { ReadingOfRecord } from "../../domain/cultures/surveillance-of.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import { facility } from "../../store/facilities.ts";
import { wordsOfFacility } from "../../store/laboratory-words.ts";
import type { Read } from "../../store/store.ts";
import { wards } from "../../store/wards.ts";

/** What records are read by, with the facility's choices for wordings. */
export type WayRulesAndWords = ReadingOfRecord & { readonly words: LaboratoryWords };

/** Loads the zone of a facility, what each of its wards is from which day on, and its choices for wordings. */
export async function loadWayRules(read: Read, facilityId: number): Promise<WayRulesAndWords> {
  const { zone } = await facility(read, facilityId);
  const rows = await wards(read, facilityId);
  const words = laboratoryWords(await wordsOfFacility(read, facilityId));
  return { zone: zoneNamed(zone), words, wards: new Map(rows.map(({ id, settings }) => [id, settings])) };
}
