import type { Instant } from "../../domain/days/day-number.ts";
import { move } from "../../domain/timeline/move.ts";
import type { Mark } from "../../domain/timeline/timeline.ts";
import { type Act, notInFuture } from "../act.ts";
import { openWard } from "../wards/open-ward.ts";
import { changePatient } from "./change-patient.ts";

export interface MovePatient {
  readonly stayId: number;
  readonly movedAt: Instant;
  readonly wardId: number;
  readonly bed?: string | null;
  readonly marks?: readonly Mark[];
}

/** Moves a patient to a ward or bed, or back from time off the wards. Refuses `outside-stay`, `not-found`, `ward-closed`. */
export function movePatient(act: Act, input: MovePatient): Promise<{ wardStayId: number; version: number }> {
  notInFuture(act.now, { movedAt: input.movedAt });
  const { stayId, movedAt, wardId, bed = null, marks = [] } = input;
  return changePatient(act, {
    action: "move-patient",
    key: { stayId },
    details: { stayId, wardId },
    first: (tx) => openWard(tx, act.actor.facilityId, { wardId, at: movedAt, pointer: "/toWardId" }),
    decide: (timeline, newId) => {
      const wardStayId = newId();
      return {
        timeline: move(timeline, { stayId, wardStayId, movedAt, wardId, bed, marks }),
        answer: { wardStayId, version: 1 },
      };
    },
  });
}
