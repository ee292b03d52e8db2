import type { ComparedWard } from "../../domain/comparison/comparison-facts.ts";
import { scopeIn } from "../../domain/cultures/family-of-wards.ts";
import { monthDays } from "../../domain/days/month.ts";
import { nonDefaultWords } from "../../domain/editions/readings.ts";
import { chosenReadings, readOnOf } from "../../store/chosen-readings.ts";
import { scopesOfFacility } from "../../store/scopes.ts";
import type { Read } from "../../store/store.ts";

/** In how many of its watched months a ward was read otherwise than the editions say, and in which points. */
export interface ReadOtherwise {
  readonly months: number;
  readonly watched: number;
  readonly points: readonly string[];
}

/**
 * The wards of which infections of some months were determined by another reading of the definitions than the edition's
 * own: their rates are not comparable with those of other hospitals, or of months before.
 */
export async function readOtherwise(
  read: Read,
  facilityId: number,
  wards: readonly ComparedWard[],
): Promise<Map<number, ReadOtherwise>> {
  const chosen = await chosenReadings(read, facilityId);
  if (chosen.length === 0) return new Map();
  const readOn = await readOnOf(read, facilityId);
  const wardIds = wards.map(({ wardId }) => wardId);
  const scopes = await scopesOfFacility(read, facilityId, wardIds);
  const found = wards.flatMap(({ wardId, months }) => {
    const watched = months.filter(({ infections }) => infections !== null);
    const points = watched
      .map(({ month }) =>
        nonDefaultWords(scopeIn(scopes, wardId, month)?.edition ?? null, monthDays(month).first, readOn),
      )
      .filter((words) => words.length > 0);
    if (points.length === 0) return [];
    return [[wardId, { months: points.length, watched: watched.length, points: [...new Set(points.flat())] }] as const];
  });
  return new Map(found);
}

/** Wards with a note on such months. */
export async function withReadings(
  read: Read,
  facilityId: number,
  wards: readonly ComparedWard[],
): Promise<ComparedWard[]> {
  const otherwise = await readOtherwise(read, facilityId, wards);
  return wards.map((ward) => {
    const found = otherwise.get(ward.wardId);
    return found ? { ...ward, notes: [...ward.notes, `${readOtherwiseText(found)}.`] } : ward;
  });
}

/** Such months of a ward in words. */
export function readOtherwiseText({ months, watched }: ReadOtherwise): string {
  return `Non-default reading of the definitions in ${months} of ${watched} months`;
}
