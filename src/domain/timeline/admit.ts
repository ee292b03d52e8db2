import type { Instant } from "../days/day-number.ts";
import { checkStay } from "./check-stay.ts";
import { type Mark, newEntry, type PatientTimeline, type Stay, type WardStay, withStay } from "./timeline.ts";

export interface Admission {
  readonly stayId: number;
  readonly wardStayId: number;
  readonly patientId: number;
  readonly number: string;
  readonly admittedAt: Instant;
  readonly wardId: number;
  readonly bed: string | null;
  readonly marks?: readonly Mark[];
}

/**
 * A new stay that begins on a ward.
 * Refuses `stay-overlaps` when the patient has another stay from that time on.
 */
export function admit(timeline: PatientTimeline, admission: Admission): PatientTimeline {
  const wardStay: WardStay = {
    ...newEntry,
    id: admission.wardStayId,
    wardId: admission.wardId,
    bed: admission.bed,
    startAt: admission.admittedAt,
    endAt: null,
    absenceAfter: null,
  };
  const stay: Stay = {
    ...newEntry,
    id: admission.stayId,
    patientId: admission.patientId,
    number: admission.number,
    admittedAt: admission.admittedAt,
    dischargedAt: null,
    disposition: null,
    spanFromMoves: false,
    marks: admission.marks ?? [],
    wardStays: [wardStay],
    catheters: [],
  };
  return checkStay(withStay(timeline, stay), stay.id);
}
