import type { Instant } from "../domain/days/day-number.ts";
import { cancelDischarge as cancel, discharge } from "../domain/timeline/discharge.ts";
import { type Act, notInFuture } from "./act.ts";
import { changePatient } from "./change-patient.ts";

export interface DischargePatient {
  readonly stayId: number;
  readonly dischargedAt: Instant;
  readonly disposition?: string | null;
}

/** Ends a stay. Refuses `already-discharged`, `outside-stay` when something was recorded later. */
export function dischargePatient(act: Act, input: DischargePatient): Promise<{ stayId: number }> {
  const { stayId, dischargedAt, disposition = null } = input;
  notInFuture(act.now, { dischargedAt });
  return changePatient(act, {
    action: "discharge-patient",
    key: { stayId },
    details: {},
    decide: (timeline) => ({
      timeline: discharge(timeline, { stayId, dischargedAt, disposition }),
      answer: { stayId },
    }),
  });
}

/** Takes a discharge back. Refuses `not-discharged`, `stay-overlaps` when the patient was admitted again since. */
export function cancelDischarge(act: Act, input: { stayId: number; reason: string }): Promise<{ stayId: number }> {
  const { stayId, reason } = input;
  return changePatient(act, {
    action: "cancel-discharge",
    key: { stayId },
    details: {},
    reason,
    decide: (timeline) => ({ timeline: cancel(timeline, stayId), answer: { stayId } }),
  });
}
