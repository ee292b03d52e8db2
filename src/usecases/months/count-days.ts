import { type CountingRules, visitOpenPatientDays } from "../../domain/counting/patient-days.ts";
import type { DayNumber, Instant } from "../../domain/days/day-number.ts";
import type { OwnedStay } from "../../store/timelines.ts";
import type { WardDaySum } from "../../store/ward-days.ts";

/** A patient-day of a stretch that still lasts, counted at read. */
export interface OpenDay {
  readonly patientId: number;
  readonly identifier: string;
  readonly stayId: number;
  readonly wardId: number;
  readonly day: DayNumber;
  readonly catheter: boolean;
}

/**
 * The patient-days of open stays' stretches that still last, on the days that the rules cover, up to `now`: patient by
 * patient, each in the order of days.
 */
export function openDays(stays: readonly OwnedStay[], rules: CountingRules, now: Instant): OpenDay[] {
  const bySurvivor = new Map<number, { identifier: string; stays: OwnedStay["stay"][] }>();
  for (const { survivorId, identifier, stay } of stays) {
    const known = bySurvivor.get(survivorId);
    if (known) known.stays.push(stay);
    else bySurvivor.set(survivorId, { identifier, stays: [stay] });
  }
  const days: OpenDay[] = [];
  for (const [patientId, { identifier, stays: own }] of bySurvivor) {
    const stays = own.length > 1 ? own.toSorted((a, b) => a.admittedAt - b.admittedAt) : own;
    visitOpenPatientDays({ patientId, stays }, rules, now, (day, wardId, stayId, catheter) => {
      days.push({ patientId, identifier, stayId, wardId, day, catheter });
    });
  }
  return days;
}

/** Sums by ward and day, ledger and open days together. */
export function sumsByDay(sums: readonly WardDaySum[], open: readonly OpenDay[]): WardDaySum[] {
  const all = sums.map((sum) => ({ ...sum }));
  const byWard = new Map<number, Map<DayNumber, (typeof all)[number]>>();
  const daysOf = (wardId: number) => {
    const days = byWard.get(wardId) ?? new Map<DayNumber, (typeof all)[number]>();
    byWard.set(wardId, days);
    return days;
  };
  for (const sum of all) daysOf(sum.wardId).set(sum.day, sum);
  for (const { wardId, day, catheter } of open) {
    const days = daysOf(wardId);
    let sum = days.get(day);
    if (!sum) {
      sum = { wardId, day, patientDays: 0, catheterDays: 0 };
      days.set(day, sum);
      all.push(sum);
    }
    sum.patientDays += 1;
    if (catheter) sum.catheterDays += 1;
  }
  return all;
}
