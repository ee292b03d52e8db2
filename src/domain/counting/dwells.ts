import type { DayNumber, Instant } from "../days/day-number.ts";
import type { Zone } from "../days/zone.ts";
import type { Dwell, DwellEnd } from "../statistics/dwell-curve.ts";
import { type Catheter, type Stay, stands } from "../timeline/timeline.ts";
import { catheterStretch, holds, standingCatheters, wardStretches } from "../timeline/ward-stretches.ts";
import { countsAsIndwelling } from "./counts-as-catheter-day.ts";

/** The time in place of one patient's catheter, exchanges included, and where it began. */
export interface WardDwell extends Dwell {
  /** The inpatient ward on which it was put in, or the first one that the patient came to with it. */
  readonly wardId: number;
  /** The day of insertion; null where nobody knows it, and then the days are "at least". */
  readonly insertedOn: DayNumber | null;
}

/** What dwells are told of. */
export interface DwellRules {
  readonly zone: Pick<Zone, "dayOf">;
  readonly isInpatient: (wardId: number, day: DayNumber) => boolean;
}

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
 * first of them. A catheter still in at discharge or death was watched only so far; so was one still in place `now`.
 * Catheters of a patient who was on no inpatient ward with them are left out.
 */
export function dwellsOf(stay: Stay, rules: DwellRules, now: Instant): WardDwell[] {
  if (!stands(stay)) return [];
  const worn = standingCatheters(stay)
    .flatMap((catheter) => wornOf(stay, catheter, { rules, now }))
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
    return [{ wardId, insertedOn: one.insertedOn, days: one.lastDay - one.firstDay + 1, end: endOf(stay, one) }];
  });
}

function wornOf(stay: Stay, catheter: Catheter, { rules, now }: { rules: DwellRules; now: Instant }): Worn[] {
  const stretch = countsAsIndwelling(catheter.kind) ? catheterStretch(stay, catheter) : null;
  if (stretch === null || stretch.start > now) return [];
  const { zone } = rules;
  const insertedOn = catheter.insertedAt === null ? null : zone.dayOf(catheter.insertedAt);
  const removedAt = catheter.removedAt ?? catheter.removedAfterAt;
  return [
    {
      ...{ firstDay: insertedOn ?? zone.dayOf(stretch.start), insertedOn, start: stretch.start },
      ...{ lastDay: zone.dayOf(stretch.end ?? now), removed: removedAt !== null && removedAt === stretch.end },
    },
  ];
}

function firstInpatientWard(stay: Stay, start: Instant, { zone, isInpatient }: DwellRules): number | null {
  const places = wardStretches(stay).filter((place) => holds(place, start) || place.start > start);
  return places.find((place) => isInpatient(place.wardId, zone.dayOf(Math.max(place.start, start))))?.wardId ?? null;
}

function endOf({ dischargedAt, disposition }: Stay, { removed }: Worn): DwellEnd {
  if (removed) return "removed";
  if (dischargedAt === null) return "in-place";
  return /\b(died|dead|death|deceased|expired)\b/i.test(disposition ?? "") ? "died" : "discharged";
}
