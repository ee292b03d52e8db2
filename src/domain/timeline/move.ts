import { refuse } from "../../../shared/problems.ts";
import type { Instant } from "../days/day-number.ts";
import { checkStay } from "./check-stay.ts";
import { stayOf } from "./find-entry.ts";
import {
  endOf,
  type Mark,
  markedAnew,
  newEntry,
  type PatientTimeline,
  revise,
  type Stay,
  type WardStay,
  wardStaysInOrder,
  withEntry,
  withStay,
} from "./timeline.ts";

export interface Move {
  readonly stayId: number;
  /** The id of the ward stay that begins. */
  readonly wardStayId: number;
  readonly movedAt: Instant;
  readonly wardId: number;
  readonly bed: string | null;
  readonly marks?: readonly Mark[];
}

/**
 * The patient comes to a ward or bed: from another one, back from time off the wards, or as the first ward of a stay
 * whose own line is missing. A move recorded late lasts until the next recorded event.
 * Refuses `outside-stay` before the admission or after the discharge.
 */
export function move(timeline: PatientTimeline, order: Move): PatientTimeline {
  const stay = stayOf(timeline, order.stayId);
  const inOrder = wardStaysInOrder(stay);
  const after = inOrder.find((w) => w.startAt > order.movedAt);
  const isFirst = after === inOrder[0] && isWithin(stay, order.movedAt);
  const before = isFirst ? null : lastStartedBy(stay, order.movedAt, "/movedAt");
  const interrupted = before !== null && endOf(before) > order.movedAt;
  const arrived: WardStay = {
    ...newEntry,
    id: order.wardStayId,
    wardId: order.wardId,
    bed: order.bed,
    startAt: order.movedAt,
    endAt: interrupted ? before.endAt : (after?.startAt ?? stay.dischargedAt),
    absenceAfter: interrupted ? before.absenceAfter : null,
    marks: order.marks ?? [],
  };
  const left = interrupted ? withEntry(stay.wardStays, revise(before, leftFor(before, order.movedAt))) : stay.wardStays;
  const wardStays = withEntry(left, arrived);
  return checkStay(withStay(timeline, { ...stay, wardStays }), stay.id);
}

function isWithin({ admittedAt, dischargedAt }: Stay, at: Instant): boolean {
  return at >= admittedAt && (dischargedAt === null || at < dischargedAt);
}

function leftFor(before: WardStay, endAt: Instant): Partial<WardStay> {
  return { endAt, absenceAfter: null, marks: markedAnew(before, { endAt }) };
}

/** The last ward stay that had begun by then. Refuses `outside-stay`, at `pointer`, when none had or the stay was over. */
export function lastStartedBy(stay: Stay, at: Instant, pointer = ""): WardStay {
  const started = wardStaysInOrder(stay).filter((w) => w.startAt <= at);
  const last = started.at(-1);
  const where = { pointer, other: `stay ${stay.id}` };
  if (!last) return refuse("outside-stay", "The patient was not on any unit before that time.", where);
  if (stay.dischargedAt !== null && at >= stay.dischargedAt)
    refuse("outside-stay", "The patient had been discharged by that time.", where);
  return last;
}
