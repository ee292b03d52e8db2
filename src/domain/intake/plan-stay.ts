import { refuse } from "../../../shared/problems.ts";
import type { Instant } from "../days/day-number.ts";
import { checkStay } from "../timeline/check-stay.ts";
import { newEntry, type PatientTimeline, revise, type Stay, stands, withStay } from "../timeline/timeline.ts";
import type { LineOf } from "./intake-line.ts";
import { notMadeHere, type Plan } from "./plan.ts";

/** The stay of that number that stands, if the patient has one. */
export function stayByNumber(timeline: PatientTimeline, number: string): Stay | undefined {
  return timeline.stays.find((stay) => stay.number === number && stands(stay));
}

/** A stay without ward stays yet. Checked by the caller. */
export function newStay(
  plan: Plan,
  said: Pick<Stay, "number" | "admittedAt" | "dischargedAt" | "disposition" | "spanFromMoves" | "marks">,
): Stay {
  return { ...newEntry, ...said, id: plan.newId(), patientId: plan.patientId, wardStays: [], catheters: [] };
}

/**
 * Applies a line of stays.csv: a new stay, or a correction of the one that has this number. A stay that gives neither
 * admission nor discharge takes both from its moves. `firstMove` is the first move of the stay in the same folder.
 * Refuses `field-missing` when an admission cannot be known, and what the other stays contradict.
 */
export function planStay(
  plan: Plan,
  line: LineOf<"stays.csv">,
  firstMove: Instant | null,
): { timeline: PatientTimeline } | "unchanged" {
  const { stay: number, admitted, discharged, disposition } = line.values;
  const known = stayByNumber(plan.timeline, number);
  const spanFromMoves = admitted === null && discharged === null;
  const admittedAt = admitted ?? known?.admittedAt ?? firstMove;
  if (admittedAt === null)
    return refuse("field-missing", "The stay has no admission and no move that could stand for it.", {
      pointer: "/admittedAt",
    });
  if (!known) {
    const marks = line.marks.map((mark) => `repeated-hour:${mark.column}` as const);
    const stay = newStay(plan, { number, admittedAt, dischargedAt: discharged, disposition, spanFromMoves, marks });
    return { timeline: checkStay(withStay(plan.timeline, stay), stay.id) };
  }
  const said = spanFromMoves
    ? { disposition: disposition ?? known.disposition }
    : { admittedAt, dischargedAt: discharged, disposition: disposition ?? known.disposition, spanFromMoves };
  if (Object.entries(said).every(([field, value]) => known[field as keyof Stay] === value)) return "unchanged";
  notMadeHere(plan, `stay ${known.id}`);
  return { timeline: checkStay(withStay(plan.timeline, revise(known, said)), known.id) };
}

/**
 * A recorded stay with room for what a line says of it and for what was recorded before: its moves can then be
 * completed in any order, before the line itself is applied to what they leave.
 */
export function withRoom(known: Stay, { admitted, discharged }: LineOf<"stays.csv">["values"]): Stay {
  const dischargedAt =
    known.dischargedAt === null || discharged === null ? null : Math.max(known.dischargedAt, discharged);
  return { ...known, admittedAt: Math.min(known.admittedAt, admitted ?? known.admittedAt), dischargedAt };
}
