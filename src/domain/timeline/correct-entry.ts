import { withArrivals } from "./arrivals.ts";
import { checkStay } from "./check-stay.ts";
import { catheterOf, stayOf, wardStayOf } from "./find-entry.ts";
import {
  type Catheter,
  type Mark,
  markedAnew,
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
 * values contradict, as when they were first recorded. `marks` are those of the new times, here and below.
 */
export function correctStay(
  timeline: PatientTimeline,
  stayId: number,
  { marks = [], ...changes }: StayChanges & Marked,
): PatientTimeline {
  const stay = corrected(stayOf(timeline, stayId), { ...changes, ...ownSpan(changes) }, marks);
  return checkStay(withStay(timeline, changes.admittedAt === undefined ? stay : withArrivals(stay)), stayId);
}

/** Corrects a ward stay: its ward, bed, beginning, end, or the kind of the absence that follows. */
export function correctWardStay(
  timeline: PatientTimeline,
  id: number,
  { marks = [], ...changes }: WardStayChanges & Marked,
): PatientTimeline {
  const { stay, wardStay } = wardStayOf(timeline, id);
  const wardStays = withEntry(stay.wardStays, corrected(wardStay, changes, marks));
  return checkStay(withStay(timeline, { ...stay, wardStays }), stay.id);
}

/** Corrects anything that was said of a catheter. */
export function correctCatheter(
  timeline: PatientTimeline,
  id: number,
  { marks = [], ...changes }: CatheterChanges & Marked,
): PatientTimeline {
  const { stay, catheter } = catheterOf(timeline, id);
  // The mark of a removal is at its instant, also where two times around it were taken.
  const isRemoval = "removedAfterAt" in changes || "removedBeforeAt" in changes;
  const after = { marks: markedAnew(catheter, isRemoval ? { ...changes, removedAt: null } : changes, marks) };
  const catheters = withEntry(stay.catheters, revise(catheter, { ...changes, ...after }));
  return checkStay(withStay(timeline, { ...stay, catheters }), stay.id);
}

/** What is doubtful about the new times. */
interface Marked {
  readonly marks?: readonly Mark[];
}

function corrected<T extends Stay | WardStay | Catheter>(entry: T, changes: Partial<T>, marks: readonly Mark[]): T {
  return revise<T>(entry, { ...changes, marks: markedAnew(entry, changes, marks) });
}

/** A stay whose admission or discharge a person gave no longer follows its moves. */
function ownSpan({ admittedAt, dischargedAt }: StayChanges): Partial<Stay> {
  return admittedAt === undefined && dischargedAt === undefined ? {} : { spanFromMoves: false };
}
