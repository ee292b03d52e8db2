import {
  voidCatheter as decideCatheter,
  voidStay as decideStay,
  voidWardStay as decideWardStay,
} from "../domain/timeline/void-entry.ts";
import type { Act } from "./act.ts";
import { changePatient } from "./change-patient.ts";

/** Voids a stay that was recorded in error, with everything in it. */
export function voidStay(act: Act, input: { stayId: number; reason: string }): Promise<{ stayId: number }> {
  const { stayId, reason } = input;
  return changePatient(act, {
    action: "void-stay",
    key: { stayId },
    details: {},
    reason,
    decide: (timeline) => ({ timeline: decideStay(timeline, stayId, reason), answer: { stayId } }),
  });
}

/** Voids a ward stay: the patient was not there. Refuses `first-ward-stay` for the only one. */
export function voidWardStay(act: Act, input: { wardStayId: number; reason: string }): Promise<{ wardStayId: number }> {
  const { wardStayId, reason } = input;
  return changePatient(act, {
    action: "void-ward-stay",
    key: { wardStayId },
    details: {},
    reason,
    decide: (timeline) => ({ timeline: decideWardStay(timeline, wardStayId, reason), answer: { wardStayId } }),
  });
}

/** Voids a catheter that was recorded in error. */
export function voidCatheter(act: Act, input: { catheterId: number; reason: string }): Promise<{ catheterId: number }> {
  const { catheterId, reason } = input;
  return changePatient(act, {
    action: "void-catheter",
    key: { catheterId },
    details: {},
    reason,
    decide: (timeline) => ({ timeline: decideCatheter(timeline, catheterId, reason), answer: { catheterId } }),
  });
}
