import { refuse } from "../../../shared/problems.ts";
import type { Instant } from "../days/day-number.ts";
import { withArrivals } from "../timeline/arrivals.ts";
import { checkStay } from "../timeline/check-stay.ts";
import { newEntry, type PatientTimeline, revise, type Stay, stands, withStay } from "../timeline/timeline.ts";
import { marksOver, timeOf } from "./day-alone.ts";
import type { LineOf } from "./intake-line.ts";
import {
  entryMarks,
  made,
  notMadeHere,
  type Plan,
  type SameAsRecorded,
  type StepResult,
  sameAsRecorded,
} from "./plan.ts";

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
 * admission nor discharge takes both from its moves, or keeps what is recorded. `firstMove` is the first move of the
 * stay in the same folder; `recorded` is the stay as it was before the folder, when there was one.
 * Refuses `field-missing` when an admission cannot be known, and what the other stays contradict.
 */
export function planStay(
  plan: Plan,
  line: LineOf<"stays.csv">,
  { firstMove, recorded }: { firstMove: Instant | null; recorded?: Stay | undefined },
): StepResult | SameAsRecorded {
  const { stay: number, disposition } = line.values;
  const known = stayByNumber(plan.timeline, number);
  const was = recorded ?? known;
  const spanFromMoves = saysNoSpan(line.values);
  const admitted = timeOf(plan, { line, column: "admitted" }, { recorded: was?.admittedAt });
  const admittedAt = admitted ?? was?.admittedAt ?? firstMove;
  if (admittedAt === null)
    return refuse("field-missing", "The stay has no admission and no move that could replace it.", {
      pointer: "/admittedAt",
    });
  const end = { recorded: was && givenEnd(was), earliest: admittedAt };
  const dischargedAt = timeOf(plan, { line, column: "discharged" }, end) ?? (was ? givenEnd(was) : null);
  const span = { admittedAt, dischargedAt, spanFromMoves };
  if (!known || !was) {
    const stay = newStay(plan, { number, ...span, disposition, marks: entryMarks(line) });
    return { timeline: checkStay(withStay(plan.timeline, stay), stay.id), marks: [] };
  }
  const endKept = !spanFromMoves && line.values.discharged === null && dischargedAt !== null;
  const said = { ...(spanFromMoves ? {} : span), disposition: disposition ?? was.disposition };
  if (Object.entries(said).every(([field, value]) => was[field as keyof Stay] === value))
    return sameAsRecorded(plan, { entry: `stay ${known.id}`, line, endKept });
  notMadeHere(plan, `stay ${known.id}`);
  const marks = spanFromMoves ? known.marks : marksOver(line, was, said);
  const corrected = withArrivals(revise(known, { ...said, marks }));
  const timeline = checkStay(withStay(plan.timeline, corrected), known.id);
  return { timeline, marks: endKept ? ["end-kept"] : [] };
}

/** Remembers a line that was stored before as the one that made its stay. */
export function recallStay(plan: Plan, line: LineOf<"stays.csv">): void {
  const stay = stayByNumber(plan.timeline, line.values.stay);
  if (stay) made(plan, `stay ${stay.id}`, line);
}

/**
 * A recorded stay with room for what a line says of it and for what was recorded before: its moves can then be
 * completed in any order, before the line itself is applied to what they leave.
 */
export function withRoom(known: Stay, said: LineOf<"stays.csv">["values"]): Stay {
  if (saysNoSpan(said)) return known;
  const admitted = said.admitted;
  const discharged = said.discharged ?? givenEnd(known);
  const admittedAt = Math.min(known.admittedAt, admitted ?? known.admittedAt);
  const dischargedAt =
    known.dischargedAt === null || discharged === null ? null : Math.max(known.dischargedAt, discharged);
  const same = admittedAt === known.admittedAt && dischargedAt === known.dischargedAt && !known.spanFromMoves;
  return same ? known : withArrivals({ ...known, admittedAt, dischargedAt, spanFromMoves: false });
}

/** The discharge that somebody gave. Moves that ended are none: the next one may only not have come yet. */
function givenEnd({ dischargedAt, spanFromMoves }: Stay): Instant | null {
  return spanFromMoves ? null : dischargedAt;
}

function saysNoSpan({ admitted, discharged }: LineOf<"stays.csv">["values"]): boolean {
  return admitted === null && discharged === null;
}
