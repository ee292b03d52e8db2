import { withArrivals } from "./arrivals.ts";
import { checkStay } from "./check-stay.ts";
import { catheterOf, stayOf, wardStayOf } from "./find-entry.ts";
import {
  type Catheter,
  type PatientTimeline,
  revise,
  type Stay,
  type WardStay,
  withEntry,
  withStay,
} from "./timeline.ts";

export type StayChanges = Partial<Pick<Stay, "number" | "admittedAt" | "dischargedAt" | "disposition">>;
export type WardStayChanges = Partial<Pick<WardStay, "wardId" | "bed" | "startAt" | "endAt" | "absenceAfter">>;
export type CatheterChanges = Partial<Omit<Catheter, "id" | "version" | "voidReason" | "marks" | "noted">>;

/**
 * Corrects a stay; which of its catheters came with the patient follows a corrected admission. Refuses what the new
 * values contradict, as when they were first recorded.
 */
export function correctStay(timeline: PatientTimeline, stayId: number, changes: StayChanges): PatientTimeline {
  const stay = revise(stayOf(timeline, stayId), { ...changes, ...ownSpan(changes) });
  return checkStay(withStay(timeline, changes.admittedAt === undefined ? stay : withArrivals(stay)), stayId);
}

/** Corrects a ward stay: its ward, bed, beginning, end, or the kind of the absence that follows. */
export function correctWardStay(timeline: PatientTimeline, id: number, changes: WardStayChanges): PatientTimeline {
  const { stay, wardStay } = wardStayOf(timeline, id);
  const wardStays = withEntry(stay.wardStays, revise(wardStay, changes));
  return checkStay(withStay(timeline, { ...stay, wardStays }), stay.id);
}

/** Corrects anything that was said of a catheter. */
export function correctCatheter(timeline: PatientTimeline, id: number, changes: CatheterChanges): PatientTimeline {
  const { stay, catheter } = catheterOf(timeline, id);
  const catheters = withEntry(stay.catheters, revise(catheter, changes));
  return checkStay(withStay(timeline, { ...stay, catheters }), stay.id);
}

/** A stay whose admission or discharge a person gave no longer follows its moves. */
function ownSpan({ admittedAt, dischargedAt }: StayChanges): Partial<Stay> {
  return admittedAt === undefined && dischargedAt === undefined ? {} : { spanFromMoves: false };
}
