import { type Fault, Problem } from "../../../shared/problems.ts";
import { checkCatheter } from "./check-catheter.ts";
import { endOf, type PatientTimeline, type Stay, stands, type WardStay, wardStaysInOrder } from "./timeline.ts";

/**
 * Refuses a timeline whose changed stay contradicts itself or another stay: overlapping ward stays, a ward stay or
 * catheter outside its stay, an end before a beginning, two stays at once. All faults at once; each names the other
 * record.
 */
export function checkStay(timeline: PatientTimeline, stayId: number): PatientTimeline {
  const stay = timeline.stays.find((s) => s.id === stayId);
  if (!stay) throw new Error(`stay ${stayId} is not in the timeline`);
  if (!stands(stay)) return timeline;
  const faults = [
    ...ownFaults(stay),
    ...timeline.stays.flatMap((other) => (other.id === stayId ? [] : overlapFaults(stay, other))),
    ...wardStayFaults(stay),
    ...stay.catheters.filter(stands).flatMap((catheter) => checkCatheter(stay, catheter)),
  ];
  const [first, ...more] = faults;
  if (first) throw new Problem(first, ...more);
  return timeline;
}

/** Faults for two stays that both claim the patient at one time; a stay of no length claims nothing. */
export function overlapFaults(stay: Stay, other: Stay): Fault[] {
  if (!stands(other)) return [];
  const start = Math.max(stay.admittedAt, other.admittedAt);
  const end = Math.min(stay.dischargedAt ?? Number.POSITIVE_INFINITY, other.dischargedAt ?? Number.POSITIVE_INFINITY);
  if (start >= end) return [];
  return [
    {
      code: "stay-overlaps",
      pointer: "/admittedAt",
      detail: "The patient already has another stay at that time.",
      other: `stay ${other.id}`,
    },
  ];
}

function ownFaults(stay: Stay): Fault[] {
  if (stay.dischargedAt === null || stay.dischargedAt >= stay.admittedAt) return [];
  return [
    {
      code: "end-before-start",
      pointer: "/dischargedAt",
      detail: "The discharge is before the admission.",
      other: `stay ${stay.id}`,
    },
  ];
}

function wardStayFaults(stay: Stay): Fault[] {
  const inOrder = wardStaysInOrder(stay);
  return inOrder.flatMap((wardStay, i) => {
    const before = inOrder[i - 1];
    return [...placeFaults(stay, wardStay), ...(before ? orderFaults(before, wardStay) : [])];
  });
}

function placeFaults(stay: Stay, wardStay: WardStay): Fault[] {
  const faults: Fault[] = [];
  if (endOf(wardStay) < wardStay.startAt)
    faults.push({ code: "end-before-start", pointer: "/endAt", detail: "The unit stay ends before it begins." });
  const past = stay.dischargedAt !== null && endOf(wardStay) > stay.dischargedAt;
  if (wardStay.startAt < stay.admittedAt || past)
    faults.push({
      code: "outside-stay",
      pointer: past ? "/endAt" : "/startAt",
      detail: past
        ? "The time on the unit reaches beyond the discharge."
        : "The time on the unit begins before the admission.",
      other: `stay ${stay.id}`,
    });
  return faults;
}

function orderFaults(before: WardStay, wardStay: WardStay): Fault[] {
  if (endOf(before) <= wardStay.startAt) return [];
  return [
    {
      code: "move-overlaps",
      pointer: "/startAt",
      detail: "The patient was already on a unit at that time.",
      other: `ward stay ${before.id}`,
    },
  ];
}
