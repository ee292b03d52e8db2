import { refuse } from "../../../shared/problems.ts";
import { dayMs } from "../days/day-number.ts";
import { checkStay } from "../timeline/check-stay.ts";
import { insertCatheter } from "../timeline/insert-catheter.ts";
import {
  type Catheter,
  hasNoHour,
  type PatientTimeline,
  revise,
  type Stay,
  stands,
  withEntry,
  withStay,
} from "../timeline/timeline.ts";
import { catheterStretch, wardStretches } from "../timeline/ward-stretches.ts";
import { isTimeOf, marksOver, removalOnDay, timeOf } from "./day-alone.ts";
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
import { stayByNumber } from "./plan-stay.ts";

/**
 * Applies a line of catheters.csv: a catheter, or a correction of the one that has its number, or that was inserted at
 * its time. One that was inserted before the stay began was in place on arrival and is marked so.
 * Refuses `stay-unknown`, and what the stay and the catheter's own times contradict.
 */
export function planCatheter(
  plan: Plan,
  line: LineOf<"catheters.csv">,
): (StepResult & { catheterId: number }) | SameAsRecorded {
  const stay = stayByNumber(plan.timeline, line.values.stay);
  if (!stay) return refuse("stay-unknown", "No stay has this number.", { pointer: "/stay" });
  const known = catheterOfLine(plan, line, stay);
  const values = withTimes(plan, line, { stay, known });
  const early = values.inserted !== null && values.inserted < stay.admittedAt;
  const told = known ? overKnown(known, values, stay) : whollySaid(values, early);
  const said = { ...told, ...removalOnDay(plan, { ...line, values }, known) };
  if (known && Object.entries(said).every(([field, value]) => known[field as keyof Catheter] === value))
    return sameAsRecorded(plan, { entry: `catheter ${known.id}`, line, endKept: endKept(known, values) });
  if (known) notMadeHere(plan, `catheter ${known.id}`);
  const catheterId = known?.id ?? plan.newId();
  const timeline = known
    ? checkStay(
        withStay(plan.timeline, {
          ...stay,
          catheters: withEntry(stay.catheters, revise(known, { ...said, marks: marksOver(line, known, said) })),
        }),
        stay.id,
      )
    : insertCatheter(plan.timeline, {
        ...said,
        stayId: stay.id,
        catheterId,
        marks: entryMarks(line),
      });
  const kept: LineMark[] = known && endKept(known, values) ? ["end-kept"] : [];
  return { timeline, marks: [...marksOf(timeline, stay.id, catheterId), ...kept], catheterId };
}

/** The values of a line of which a day alone is told over what is recorded of it. */
function withTimes(
  plan: Plan,
  line: LineOf<"catheters.csv">,
  { stay, known }: { stay: Stay; known: Catheter | undefined },
): CatheterValues {
  const inserted = { recorded: known?.insertedAt, earliest: stay.admittedAt };
  return {
    ...line.values,
    inserted: timeOf(plan, { line, column: "inserted" }, inserted),
    last_seen: timeOf(plan, { line, column: "last_seen" }, { recorded: known?.lastSeenAt }),
  };
}

function endKept(known: Catheter, { removed }: CatheterValues): boolean {
  return removed === null && (known.removedAt !== null || known.removedBeforeAt !== null);
}

type CatheterValues = LineOf<"catheters.csv">["values"];

function whollySaid(values: CatheterValues, early: boolean) {
  return {
    number: values.catheter,
    kind: values.kind,
    insertedAt: values.inserted,
    inPlaceOnArrival: values.in_place_on_arrival ?? early,
    removedAt: values.removed,
    lastSeenAt: values.last_seen,
    indication: values.indication,
    sizeFr: values.size_fr,
    balloonMl: values.balloon_ml,
  };
}

/** An empty cell says nothing about a recorded catheter; an exact removal takes the place of one between two times. */
function overKnown(known: Catheter, values: CatheterValues, { admittedAt }: Stay) {
  const early = values.inserted !== null && values.inserted < admittedAt;
  const said = whollySaid(values, early);
  // With the insertion at the very admission the times leave open whether it came along: what was said of it holds.
  const open = values.inserted === null || (values.inserted === known.insertedAt && values.inserted === admittedAt);
  const inPlaceOnArrival = values.in_place_on_arrival ?? (open ? known.inPlaceOnArrival : early);
  const kept = Object.entries(said).map(([field, value]) => [field, value ?? known[field as keyof Catheter]]);
  const exact = values.removed === null ? {} : { removedAfterAt: null, removedBeforeAt: null };
  return { ...(Object.fromEntries(kept) as typeof said), ...exact, inPlaceOnArrival };
}

/** Remembers a line that was stored before as the one that made its catheter. */
export function recallCatheter(plan: Plan, line: LineOf<"catheters.csv">): void {
  const stay = stayByNumber(plan.timeline, line.values.stay);
  const known = stay && catheterOfLine(plan, line, stay);
  if (known) made(plan, `catheter ${known.id}`, line);
}

/** The catheter that stands and has that number; where one of them has none, of that kind and inserted at that time. */
function catheterOfLine(plan: Plan, line: LineOf<"catheters.csv">, stay: Stay): Catheter | undefined {
  const { catheter: number, kind } = line.values;
  const standing = stay.catheters.filter(stands);
  const numbered = number === null ? undefined : standing.find((catheter) => catheter.number === number);
  return (
    numbered ??
    standing.find((catheter) => {
      const oneHasNoNumber = catheter.number === null || number === null;
      const isInserted = isTimeOf(plan, { line, column: "inserted" }, catheter.insertedAt);
      return oneHasNoNumber && catheter.kind === kind && isInserted;
    })
  );
}

function marksOf(timeline: PatientTimeline, stayId: number, catheterId: number): LineMark[] {
  const stay = timeline.stays.find((s) => s.id === stayId) as Stay;
  const catheter = stay.catheters.find((c) => c.id === catheterId) as Catheter;
  const { inPlaceOnArrival, removedAt } = catheter;
  // Where moves alone tell of a stay, the next one may only not have come yet.
  const discharged = stay.spanFromMoves ? null : stay.dischargedAt;
  // A discharge without an hour was at any time of its day.
  const slack = hasNoHour(stay, "dischargedAt") ? dayMs : 0;
  const isLate = removedAt !== null && discharged !== null && removedAt > discharged + slack;
  return [
    ...(inPlaceOnArrival ? (["in-place-on-arrival"] as const) : []),
    ...(isLate ? (["removed-after-discharge"] as const) : []),
    ...(isOffTheWards(stay, catheter) ? (["off-the-wards"] as const) : []),
  ];
}

function isOffTheWards(stay: Stay, catheter: Catheter): boolean {
  const inPlace = catheterStretch(stay, catheter);
  if (!inPlace) return false;
  const end = inPlace.end ?? Number.POSITIVE_INFINITY;
  return !wardStretches(stay).some(
    (s) => s.kind === "ward" && s.start <= end && (s.end ?? Number.POSITIVE_INFINITY) > inPlace.start,
  );
}
