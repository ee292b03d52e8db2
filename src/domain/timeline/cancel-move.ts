import { refuse } from "../../../shared/problems.ts";
import { checkStay } from "./check-stay.ts";
import { wardStayOf } from "./find-entry.ts";
import { type PatientTimeline, revise, wardStaysInOrder, withEntry, withStay } from "./timeline.ts";

/**
 * Takes a move back: the patient stayed where they were. The ward stay before it lasts as long as the cancelled one
 * did; after time off the wards, the absence goes on instead.
 * Refuses `first-ward-stay` for the one that the stay began with.
 */
export function cancelMove(timeline: PatientTimeline, order: { wardStayId: number; reason: string }): PatientTimeline {
  const { stay, wardStay } = wardStayOf(timeline, order.wardStayId);
  const inOrder = wardStaysInOrder(stay);
  const before = inOrder[inOrder.findIndex((w) => w.id === wardStay.id) - 1];
  if (!before)
    return refuse("first-ward-stay", "The stay begins with this unit stay.", { other: `ward stay ${wardStay.id}` });
  let wardStays = withEntry(stay.wardStays, revise(wardStay, { voidReason: order.reason }));
  if (before.endAt === wardStay.startAt)
    wardStays = withEntry(wardStays, revise(before, { endAt: wardStay.endAt, absenceAfter: wardStay.absenceAfter }));
  return checkStay(withStay(timeline, { ...stay, wardStays }), stay.id);
}
