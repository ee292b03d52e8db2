import { refuse } from "../../../shared/problems.ts";
import type { Instant } from "../days/day-number.ts";
import { checkStay } from "../timeline/check-stay.ts";
import { recordWardStay, spanned } from "../timeline/record-ward-stay.ts";
import {
  type PatientTimeline,
  revise,
  type Stay,
  stands,
  type WardStay,
  withEntry,
  withStay,
} from "../timeline/timeline.ts";
import { isTimeOf, marksOver, timeOf } from "./day-alone.ts";
import type { LineOf } from "./intake-line.ts";
import type { LineMark } from "./outcome.ts";
import {
  entryMarks,
  made,
  notMadeHere,
  type Plan,
  type SameAsRecorded,
  type StepResult,
  sameAsRecorded,
} from "./plan.ts";
import { newStay, stayByNumber } from "./plan-stay.ts";

/**
 * Applies a line of moves.csv: time on a ward, or a correction of the one that began on that ward at that time. A stay
 * that no other line described begins and ends with its moves. `next` is when the next move of the stay begins.
 * Refuses what the other moves and stays contradict.
 */
export function planMove(
  plan: Plan,
  line: LineOf<"moves.csv">,
  next: Instant | null,
): (StepResult & { wardStayId: number; stayId: number; isNewStay: boolean }) | SameAsRecorded {
  const wardId = plan.wardIds.get(line.values.ward);
  refuseEndless(line.values);
  if (wardId === undefined) throw new Error("a move names a ward that nobody made");
  const known = stayByNumber(plan.timeline, line.values.stay);
  const stay = known ?? stayOfMove(plan, line);
  const before = wardStayOfMove(plan, line, { stay, wardId });
  const values = withTimes(plan, line, { before, admittedAt: known?.admittedAt });
  const said = overRecorded(values, before);
  const marks = absenceMarks({ to: said.endAt, absence: said.absenceAfter }, next);
  const endKept = values.to === null && said.endAt !== null;
  if (before) {
    const entry = `ward stay ${before.id}`;
    if (before.endAt === said.endAt && before.bed === said.bed && before.absenceAfter === said.absenceAfter)
      return sameAsRecorded(plan, { entry, line, endKept });
    notMadeHere(plan, entry);
    const written = { ...said, marks: marksOver(line, before, { startAt: values.from, ...said }) };
    return {
      ...correct(plan, { stay, before, said: written }),
      marks: endKept ? [...marks, "end-kept"] : marks,
      wardStayId: before.id,
      stayId: stay.id,
      isNewStay: false,
    };
  }
  const wardStayId = plan.newId();
  const timeline = recordWardStay(known ? plan.timeline : withStay(plan.timeline, stay), {
    stayId: stay.id,
    wardStayId,
    wardId,
    startAt: values.from,
    ...said,
    marks: entryMarks(line),
  });
  return { timeline, marks, wardStayId, stayId: stay.id, isNewStay: known === undefined };
}

/** The values of a line of which a day alone is told over what is recorded of it. */
function withTimes(
  plan: Plan,
  line: LineOf<"moves.csv">,
  { before, admittedAt }: { before: WardStay | undefined; admittedAt: Instant | undefined },
): LineOf<"moves.csv">["values"] {
  const from = timeOf(plan, { line, column: "from" }, { recorded: before?.startAt, earliest: admittedAt });
  const to = timeOf(plan, { line, column: "to" }, { recorded: before?.endAt, earliest: from });
  return { ...line.values, from: from ?? line.values.from, to };
}

/** An empty cell says nothing about what is recorded: neither an end nor an absence is taken back by it. */
function overRecorded({ bed, to, absence }: LineOf<"moves.csv">["values"], before: WardStay | undefined) {
  return {
    bed: bed ?? before?.bed ?? null,
    endAt: to ?? before?.endAt ?? null,
    absenceAfter: absence ?? before?.absenceAfter ?? null,
  };
}

/** The ward stay that stands and began on that ward at that time. */
function wardStayOfMove(
  plan: Plan,
  line: LineOf<"moves.csv">,
  { stay, wardId }: { stay: Stay; wardId: number },
): WardStay | undefined {
  return stay.wardStays.find(
    (w) => stands(w) && w.wardId === wardId && isTimeOf(plan, { line, column: "from" }, w.startAt),
  );
}

/** Remembers a line that was stored before as the one that made its ward stay. */
export function recallMove(plan: Plan, line: LineOf<"moves.csv">): void {
  const { stay: number, ward } = line.values;
  const stay = stayByNumber(plan.timeline, number);
  const before = stay && wardStayOfMove(plan, line, { stay, wardId: plan.wardIds.get(ward) ?? 0 });
  if (before) made(plan, `ward stay ${before.id}`, line);
}

function stayOfMove(plan: Plan, line: LineOf<"moves.csv">): Stay {
  const { values } = line;
  const to = timeOf(plan, { line, column: "to" }, { earliest: values.from });
  if (to !== null && to < values.from)
    refuse("end-before-start", "The move ends before it begins.", { pointer: "/endAt" });
  return newStay(plan, {
    number: values.stay,
    admittedAt: values.from,
    dischargedAt: to,
    disposition: null,
    spanFromMoves: true,
    marks: [],
  });
}

function correct(
  plan: Plan,
  { stay, before, said }: { stay: Stay; before: WardStay; said: Partial<WardStay> },
): { timeline: PatientTimeline } {
  const wardStays = withEntry(stay.wardStays, revise(before, said));
  return { timeline: checkStay(withStay(plan.timeline, spanned({ ...stay, wardStays })), stay.id) };
}

function absenceMarks(
  { to, absence }: { to: Instant | null; absence: string | null },
  next: Instant | null,
): LineMark[] {
  if (to === null || next === null || next <= to) return [];
  return [absence === null ? "absence-unknown" : "absence-known"];
}

function refuseEndless({ to, absence }: LineOf<"moves.csv">["values"]): void {
  if (to === null && absence !== null)
    refuse("field-missing", "An absence begins when the move ends, and no end is given.", { pointer: "/endAt" });
}
