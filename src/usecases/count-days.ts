import { openPatientDays } from "../domain/counting/patient-days.ts";
import type { DayNumber, Instant } from "../domain/days/day-number.ts";
import type { OwnedStay } from "../store/timelines.ts";
import type { WardDaySum, WardSum } from "../store/ward-days.ts";
import type { FacilityRules } from "./counting-rules.ts";

/** A patient-day of a stretch that still lasts, counted at read. */
export interface OpenDay {
  readonly patientId: number;
  readonly identifier: string;
  readonly stayId: number;
  readonly wardId: number;
  readonly day: DayNumber;
  readonly catheter: boolean;
}

/** The patient-days of open stays' stretches that still last, on the days that the rules cover, up to `now`. */
export function openDays(stays: readonly OwnedStay[], rules: FacilityRules, now: Instant): OpenDay[] {
  const bySurvivor = new Map<number, { identifier: string; stays: OwnedStay["stay"][] }>();
  for (const { survivorId, identifier, stay } of stays) {
    const known = bySurvivor.get(survivorId);
    if (known) known.stays.push(stay);
    else bySurvivor.set(survivorId, { identifier, stays: [stay] });
  }
  return [...bySurvivor].flatMap(([patientId, { identifier, stays: own }]) =>
    openPatientDays({ patientId, stays: own }, rules, now).map((row) => ({ ...row, patientId, identifier })),
  );
}

/** Adds open days to sums of the ledger; `key` tells which sum a day belongs to. */
export function addOpenDays<T extends WardSum>(
  sums: readonly T[],
  open: readonly OpenDay[],
  { key, keyOf, start }: { key: (sum: T) => string; keyOf: (day: OpenDay) => string; start: (day: OpenDay) => T },
): T[] {
  const byKey = new Map(sums.map((sum) => [key(sum), sum]));
  for (const day of open) {
    const sum = byKey.get(keyOf(day)) ?? start(day);
    const catheterDays = sum.catheterDays + (day.catheter ? 1 : 0);
    byKey.set(keyOf(day), { ...sum, patientDays: sum.patientDays + 1, catheterDays });
  }
  return [...byKey.values()];
}

/** Sums by ward, ledger and open days together. */
export function sumsByWard(sums: readonly WardSum[], open: readonly OpenDay[]): WardSum[] {
  return addOpenDays(sums, open, {
    key: (sum) => `${sum.wardId}`,
    keyOf: (day) => `${day.wardId}`,
    start: (day) => ({ wardId: day.wardId, patientDays: 0, catheterDays: 0 }),
  });
}

/** Sums by ward and day, ledger and open days together. */
export function sumsByDay(sums: readonly WardDaySum[], open: readonly OpenDay[]): WardDaySum[] {
  return addOpenDays(sums, open, {
    key: (sum) => `${sum.wardId} ${sum.day}`,
    keyOf: (day) => `${day.wardId} ${day.day}`,
    start: (day) => ({ wardId: day.wardId, day: day.day, patientDays: 0, catheterDays: 0 }),
  });
}
