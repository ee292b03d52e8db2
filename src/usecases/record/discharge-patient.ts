import type { Instant } from "../../domain/days/day-number.ts";
import { cancelDischarge as cancel, discharge } from "../../domain/timeline/discharge.ts";
import { stayOf } from "../../domain/timeline/find-entry.ts";
import type { Mark } from "../../domain/timeline/timeline.ts";
import { wards } from "../../store/wards.ts";
import { type Act, notInFuture } from "../act.ts";
import { openWards, refuseStayOnClosed } from "../wards/open-ward.ts";
import { changePatient } from "./change-patient.ts";

export interface DischargePatient {
  readonly stayId: number;
  readonly dischargedAt: Instant;
  readonly disposition?: string | null | undefined;
  readonly marks?: readonly Mark[];
  readonly seenVersion?: number | undefined;
}

/** Ends a stay. Refuses `already-discharged`, `outside-stay` when something was recorded later. */
export function dischargePatient(act: Act, input: DischargePatient): Promise<{ stayId: number; version: number }> {
  const { stayId, dischargedAt, disposition = null, marks = [], seenVersion } = input;
  notInFuture(act.now, { dischargedAt });
  return changePatient(act, {
    action: "discharge-patient",
    key: { stayId },
    subject: { kind: "stay", id: stayId, seenVersion },
    details: {},
    decide: (timeline) => ({
      timeline: discharge(timeline, { stayId, dischargedAt, disposition, marks }),
      answer: { stayId },
    }),
  });
}

/**
 * Takes a discharge back. Refuses `not-discharged`, `stay-overlaps` when the patient was admitted again since, and
 * `ward-closed` when the ward that the patient would still be on has closed.
 */
export function cancelDischarge(
  act: Act,
  input: { stayId: number; reason: string; seenVersion?: number | undefined },
): Promise<{ stayId: number; version: number }> {
  const { stayId, reason, seenVersion } = input;
  const { facilityId } = act.actor;
  let refuseClosed: Awaited<ReturnType<typeof openWards>> = () => {};
  return changePatient(act, {
    action: "cancel-discharge",
    key: { stayId },
    subject: { kind: "stay", id: stayId, seenVersion },
    details: {},
    reason,
    first: async (tx) => {
      refuseClosed = await openWards(tx, facilityId, await wards(tx, facilityId));
    },
    decide: (timeline) => {
      const after = cancel(timeline, stayId);
      refuseStayOnClosed(refuseClosed, stayOf(after, stayId), { at: act.now, pointer: "" });
      return { timeline: after, answer: { stayId } };
    },
  });
}
