import { refuse } from "../../../shared/problems.ts";
import { checkStay } from "./check-stay.ts";
import { catheterOf, stayOf, wardStayOf } from "./find-entry.ts";
import { type PatientTimeline, revise, stands, wardStaysInOrder, withEntry, withStay } from "./timeline.ts";

/** Voids a stay with everything in it: it was recorded in error. The entries stay readable. */
export function voidStay(timeline: PatientTimeline, stayId: number, reason: string): PatientTimeline {
  const stay = stayOf(timeline, stayId);
  const voidReason = reason;
  const wardStays = stay.wardStays.map((w) => (stands(w) ? revise(w, { voidReason }) : w));
  const catheters = stay.catheters.map((c) => (stands(c) ? revise(c, { voidReason }) : c));
  return withStay(timeline, revise({ ...stay, wardStays, catheters }, { voidReason }));
}

/**
 * Voids a ward stay: the patient was not there. What was before is left as it is, so the time becomes time off the
 * wards. Refuses `first-ward-stay` for the only one of a stay: void the stay instead.
 */
export function voidWardStay(timeline: PatientTimeline, wardStayId: number, reason: string): PatientTimeline {
  const { stay, wardStay } = wardStayOf(timeline, wardStayId);
  if (wardStaysInOrder(stay).length === 1)
    refuse("first-ward-stay", "This is the only unit stay of the stay.", { other: `ward stay ${wardStayId}` });
  const inOrder = wardStaysInOrder(stay);
  const before = inOrder[inOrder.findIndex((w) => w.id === wardStayId) - 1];
  let wardStays = withEntry(stay.wardStays, revise(wardStay, { voidReason: reason }));
  // The absence before it was of a kind only until here: of the longer one nobody said what it was.
  if (before && before.absenceAfter !== null) wardStays = withEntry(wardStays, revise(before, { absenceAfter: null }));
  return checkStay(withStay(timeline, { ...stay, wardStays }), stay.id);
}

/** Voids a catheter that was recorded in error. */
export function voidCatheter(timeline: PatientTimeline, catheterId: number, reason: string): PatientTimeline {
  const { stay, catheter } = catheterOf(timeline, catheterId);
  const catheters = withEntry(stay.catheters, revise(catheter, { voidReason: reason }));
  return checkStay(withStay(timeline, { ...stay, catheters }), stay.id);
}
