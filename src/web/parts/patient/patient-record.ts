import type { readPatient } from "../../../../shared/api/patients.ts";
import type { OutputOf } from "../../../../shared/endpoint.ts";

/** A patient's record as the server tells it. */
export type PatientRecord = OutputOf<typeof readPatient>;
export type Stay = PatientRecord["stays"][number];
export type WardStay = PatientRecord["wardStays"][number];
export type Catheter = PatientRecord["catheters"][number];

/** Where the patient is in a stay by now, or was last; null when no time on a ward stands. */
export function lastWardStay({ wardStays }: PatientRecord, stayId: number): WardStay | null {
  const own = wardStays.filter((wardStay) => wardStay.stayId === stayId && wardStay.voidReason === null);
  return own.sort((a, b) => a.startAt - b.startAt).at(-1) ?? null;
}

/** The age in whole days on a day; null when nobody knows the day of birth. */
export function ageDays({ patient }: PatientRecord, today: string): number | null {
  return patient.birthDay === null ? null : (Date.parse(today) - Date.parse(patient.birthDay)) / 86_400_000;
}
