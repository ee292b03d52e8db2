import { refuse } from "../../../shared/problems.ts";
import type { Instant } from "../days/day-number.ts";
import { checkStay } from "./check-stay.ts";
import { stayOf } from "./find-entry.ts";
import {
  type Mark,
  markedAnew,
  type PatientTimeline,
  revise,
  wardStaysInOrder,
  withEntry,
  withStay,
} from "./timeline.ts";

export interface Discharge {
  readonly stayId: number;
  readonly dischargedAt: Instant;
  readonly disposition: string | null;
  readonly marks?: readonly Mark[];
}

/**
 * The stay ends, and with it every count: a catheter still in place is no catheter-day afterwards.
 * Refuses `already-discharged`, and `outside-stay` when a move was recorded after that time.
 */
export function discharge(timeline: PatientTimeline, order: Discharge): PatientTimeline {
  const stay = stayOf(timeline, order.stayId);
  if (stay.dischargedAt !== null)
    refuse("already-discharged", "This stay has ended already.", { other: `stay ${stay.id}` });
  const last = wardStaysInOrder(stay).at(-1);
  const closed =
    last && last.endAt === null
      ? withEntry(stay.wardStays, revise(last, { endAt: order.dischargedAt }))
      : stay.wardStays;
  const { dischargedAt, disposition } = order;
  const marks = markedAnew(stay, { dischargedAt }, order.marks ?? []);
  const ended = revise({ ...stay, wardStays: closed }, { dischargedAt, disposition, marks, spanFromMoves: false });
  return checkStay(withStay(timeline, ended), stay.id);
}

/**
 * Takes a discharge back: the patient never left. The ward stay that the discharge had ended goes on.
 * Refuses `not-discharged`, and `stay-overlaps` when a later stay was recorded.
 */
export function cancelDischarge(timeline: PatientTimeline, stayId: number): PatientTimeline {
  const stay = stayOf(timeline, stayId);
  if (stay.dischargedAt === null) refuse("not-discharged", "This stay has not ended.", { other: `stay ${stayId}` });
  const last = wardStaysInOrder(stay).at(-1);
  const reopened =
    last && last.endAt === stay.dischargedAt
      ? withEntry(stay.wardStays, revise(last, { endAt: null, absenceAfter: null }))
      : stay.wardStays;
  const open = revise(
    { ...stay, wardStays: reopened },
    { dischargedAt: null, disposition: null, marks: markedAnew(stay, { dischargedAt: null }), spanFromMoves: false },
  );
  return checkStay(withStay(timeline, open), stayId);
}
