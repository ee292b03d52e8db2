import type { ComparedWard } from "../domain/comparison/comparison-facts.ts";
import { scopeIn } from "../domain/cultures/family-of-wards.ts";
import { monthDays } from "../domain/days/month.ts";
import { nonDefaultWords } from "../domain/editions/readings.ts";
import { chosenReadings, readOnOf } from "../store/chosen-readings.ts";
import { scopesOfFacility } from "../store/scopes.ts";
import type { Read } from "../store/store.ts";

/**
 * Wards with a note on the months whose infections were determined by another reading of the definitions than the
 * edition's own: their rates are not comparable with those of other hospitals, or of months before.
 */
export async function withReadings(
  read: Read,
  facilityId: number,
  wards: readonly ComparedWard[],
): Promise<ComparedWard[]> {
  const chosen = await chosenReadings(read, facilityId);
  if (chosen.length === 0) return [...wards];
  const readOn = await readOnOf(read, facilityId);
  const wardIds = wards.map(({ wardId }) => wardId);
  const scopes = await scopesOfFacility(read, facilityId, wardIds);
  return wards.map((ward) => {
    const watched = ward.months.filter(({ infections }) => infections !== null);
    const otherwise = watched.filter(({ month }) => {
      const edition = scopeIn(scopes, ward.wardId, month)?.edition ?? null;
      return nonDefaultWords(edition, monthDays(month).first, readOn).length > 0;
    });
    if (otherwise.length === 0) return ward;
    const note = `Non-default reading of the definitions in ${otherwise.length} of ${watched.length} months.`;
    return { ...ward, notes: [...ward.notes, note] };
  });
}
