import type { AbsenceKind } from "../../../shared/vocabulary.ts";
import type { Instant } from "../../domain/days/day-number.ts";
import { recordAbsence as decide } from "../../domain/timeline/record-absence.ts";
import type { Mark } from "../../domain/timeline/timeline.ts";
import { type Act, notInFuture } from "../act.ts";
import { changePatient } from "./change-patient.ts";

export interface RecordAbsence {
  readonly stayId: number;
  readonly leftAt: Instant;
  /** null: unknown; it is listed under data quality. */
  readonly kind: AbsenceKind | null;
  /** null: not back yet. */
  readonly backAt?: Instant | null;
  /** Of the end of the time on the ward (`endAt`), and of the return (`startAt`). */
  readonly marks?: readonly Mark[];
}

/** Time off the wards inside a stay. Refuses `not-on-a-ward`, `end-before-start`, `move-overlaps`. */
export function recordAbsence(act: Act, input: RecordAbsence): Promise<{ wardStayId: number | null }> {
  const { stayId, leftAt, kind, backAt = null, marks = [] } = input;
  notInFuture(act.now, { leftAt, backAt });
  return changePatient(act, {
    action: "record-absence",
    key: { stayId },
    details: { stayId, kind },
    decide: (timeline, newId) => {
      const back = backAt === null ? null : { at: backAt, wardStayId: newId() };
      const wardStayId = back?.wardStayId ?? null;
      return { timeline: decide(timeline, { stayId, leftAt, kind, back, marks }), answer: { wardStayId } };
    },
  });
}
