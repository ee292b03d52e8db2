import type { AbsenceKind } from "../../../shared/vocabulary.ts";
import type { Instant } from "../days/day-number.ts";
import { withArrivals } from "./arrivals.ts";
import { checkStay } from "./check-stay.ts";
import { stayOf } from "./find-entry.ts";
import {
  type Mark,
  newEntry,
  type PatientTimeline,
  revise,
  type Stay,
  wardStaysInOrder,
  withStay,
} from "./timeline.ts";

export interface RecordedWardStay {
  readonly stayId: number;
  readonly wardStayId: number;
  readonly wardId: number;
  readonly bed: string | null;
  readonly startAt: Instant;
  readonly endAt: Instant | null;
  readonly absenceAfter: AbsenceKind | null;
  readonly marks: readonly Mark[];
}

/**
 * Time on a ward as another system recorded it, from its beginning to its end. Nothing around it is changed.
 * Refuses `move-overlaps` and `outside-stay`, and `end-before-start`.
 */
export function recordWardStay(timeline: PatientTimeline, order: RecordedWardStay): PatientTimeline {
  const { stayId, wardStayId, ...said } = order;
  const stay = stayOf(timeline, stayId);
  const wardStays = [...stay.wardStays, { ...newEntry, ...said, id: wardStayId }];
  return checkStay(withStay(timeline, spanned({ ...stay, wardStays })), stayId);
}

/** A stay whose admission and discharge follow its moves, with both as the moves now say. */
export function spanned(stay: Stay): Stay {
  const inOrder = wardStaysInOrder(stay);
  const first = inOrder[0];
  if (!stay.spanFromMoves || !first) return stay;
  const admittedAt = first.startAt;
  const open = inOrder.some((w) => w.endAt === null);
  const dischargedAt = open ? null : Math.max(...inOrder.map((w) => w.endAt ?? first.startAt));
  if (admittedAt === stay.admittedAt && dischargedAt === stay.dischargedAt) return stay;
  return withArrivals(revise(stay, { admittedAt, dischargedAt }));
}
