import type { readPatient } from "../../../shared/api/patients.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { type UncountedCensus, uncountedCensuses } from "../../domain/counting/uncounted-censuses.ts";
import { dayText, type Instant } from "../../domain/days/day-number.ts";
import type { Stay } from "../../domain/timeline/timeline.ts";
import type { Read } from "../../store/store.ts";
import type { OwnedStay } from "../../store/timelines.ts";
import type { WardRow } from "../../store/wards.ts";
import type { Act } from "../act.ts";
import { groupedBy } from "../grouped-by.ts";
import { type FacilityRules, loadCountingRules } from "./counting-rules.ts";

/** An uncounted census with the ward to which its day may belong; null when no inpatient ward is recorded at all. */
export interface UncountedDay extends UncountedCensus {
  readonly wardId: number | null;
}

/**
 * The censuses of these stays that may miss a patient-day, as far as they concern the wards. Those of no ward are told
 * to whoever sees all wards.
 */
export function uncountedDays(
  { rules, wards, stays }: { rules: FacilityRules; wards: readonly WardRow[]; stays: readonly OwnedStay[] },
  now: Instant,
): UncountedDay[] {
  const within = new Set(wards.map(({ id }) => id));
  const isWhole = within.size === rules.wards.length;
  return stays
    .flatMap(({ stay }) => uncountedCensuses(stay, rules, now))
    .flatMap((census): UncountedDay[] => {
      const around = [census.lastWardId, census.nextWardId];
      const wardId = around.find((id) => id !== null && within.has(id)) ?? null;
      return wardId !== null || (isWhole && around.every((id) => id === null)) ? [{ ...census, wardId }] : [];
    });
}

type Told = OutputOf<typeof readPatient>["uncounted"];

/** The same of all stays of a patient, days in a row as one. */
export async function uncountedOfStays(read: Read, { actor, now }: Act, stays: readonly Stay[]): Promise<Told> {
  if (stays.length === 0) return [];
  const begun = Math.min(...stays.map(({ admittedAt }) => admittedAt));
  const rules = await loadCountingRules(read, actor.facilityId, (zone) => ({
    // A census at 24:00 belongs to the day before.
    first: zone.dayOf(begun) - 1,
    last: zone.dayOf(now),
  }));
  return stays.flatMap((stay) => inRuns(uncountedCensuses(stay, rules, now)));
}

function inRuns(censuses: readonly UncountedCensus[]): Told {
  // Days in a row differ from their place in the list by the same number.
  const runs = groupedBy(
    censuses.map((census, place) => ({ census, place })),
    ({ census: { kind, day, lastWardId, nextWardId }, place }) => `${kind} ${lastWardId} ${nextWardId} ${day - place}`,
  );
  return [...runs.values()].flatMap((run): Told => {
    const [first, last] = [run[0]?.census, run.at(-1)?.census];
    if (!first || !last) return [];
    const { day, ...said } = first;
    return [{ ...said, firstDay: dayText(day), lastDay: dayText(last.day), days: run.length }];
  });
}
