import type { DayNumber, Instant } from "../days/day-number.ts";
import type { Zone } from "../days/zone.ts";
import type { Dwell, DwellEnd } from "../statistics/dwell-curve.ts";
import type { CountedCatheter, CountedStay } from "../timeline/counted-timeline.ts";
import { type Stay, stands } from "../timeline/timeline.ts";
import { catheterStretch, holds, standingCatheters, wardStretches } from "../timeline/ward-stretches.ts";
import { countsAsIndwelling } from "./counts-as-catheter-day.ts";

/** The time in place of one patient's catheter, exchanges included, and where it began. */
export interface WardDwell extends Dwell {
  /** The inpatient ward on which it was put in, or the first one that the patient came to with it. */
  readonly wardId: number;
  /** The day of insertion; null where nobody knows it, or it was before the stay, and then the days are "at least". */
  readonly insertedOn: DayNumber | null;
}

/** What dwells are told of. */
export interface DwellRules {
  readonly zone: Pick<Zone, "dayOf">;
  readonly isInpatient: (wardId: number, day: DayNumber) => boolean;
}

/** A stay as far as dwells are told of it. */
export type DwellStay = CountedStay & Pick<Stay, "disposition">;

interface Worn {
  readonly firstDay: DayNumber;
  readonly insertedOn: DayNumber | null;
  readonly start: Instant;
  readonly lastDay: DayNumber;
  readonly removed: boolean;
}

/**
 * The dwells of a stay's indwelling urethral catheters. A catheter put in on the day on which another came out, or on
 * the day after, exchanges it and ends nothing: as the eligibility day, only a full day without one begins anew. Days
 * count from 1 on the day of insertion to the day of the end. A removal known only to lie between two instants ends at the
 * first of them. A catheter still in at discharge or death was watched only so far; so was one that came out after
 * `until`, the last instant that is looked at, or has not come out. Catheters of a patient who was on no inpatient ward
 * with them are left out. Common practice.
 */
export function dwellsOf(stay: DwellStay, rules: DwellRules, until: Instant): WardDwell[] {
  if (!stands(stay)) return [];
  const worn = standingCatheters(stay)
    .flatMap((catheter) => wornOf(stay, catheter, { rules, until }))
    .sort((a, b) => a.firstDay - b.firstDay || a.lastDay - b.lastDay);
  const united: Worn[] = [];
  for (const one of worn) {
    const before = united.at(-1);
    if (before && one.firstDay <= before.lastDay + 1) {
      const last = one.lastDay >= before.lastDay ? one : before;
      united[united.length - 1] = { ...before, lastDay: last.lastDay, removed: last.removed };
    } else united.push(one);
  }
  return united.flatMap((one) => {
    const wardId = firstInpatientWard(stay, one.start, rules);
    if (wardId === null) return [];
    return [{ wardId, insertedOn: one.insertedOn, days: one.lastDay - one.firstDay + 1, end: endOf(stay, one, until) }];
  });
}

function wornOf(
  stay: DwellStay,
  catheter: CountedCatheter,
  { rules, until }: { rules: DwellRules; until: Instant },
): Worn[] {
  const stretch = countsAsIndwelling(catheter.kind) ? catheterStretch(stay, catheter) : null;
  if (stretch === null || stretch.start > until) return [];
  const { zone } = rules;
  const { insertedAt } = catheter;
  const insertedOn = insertedAt === null || insertedAt < stay.admittedAt ? null : zone.dayOf(insertedAt);
  const removedAt = catheter.removedAt ?? catheter.removedAfterAt;
  const removed = removedAt !== null && removedAt === stretch.end && removedAt <= until;
  return [
    {
      ...{ firstDay: zone.dayOf(insertedAt ?? stretch.start), insertedOn, start: stretch.start },
      ...{ lastDay: zone.dayOf(Math.min(stretch.end ?? until, until)), removed },
    },
  ];
}

function firstInpatientWard(stay: DwellStay, start: Instant, { zone, isInpatient }: DwellRules): number | null {
  const places = wardStretches(stay).filter((place) => holds(place, start) || place.start > start);
  return places.find((place) => isInpatient(place.wardId, zone.dayOf(Math.max(place.start, start))))?.wardId ?? null;
}

function endOf({ dischargedAt, disposition }: DwellStay, { removed }: Worn, until: Instant): DwellEnd {
  if (removed) return "removed";
  if (dischargedAt === null || dischargedAt > until) return "in-place";
  return /\b(died|dead|death|deceased|expired)\b/i.test(disposition ?? "") ? "died" : "discharged";
}
