import {
  voidCatheter as decideCatheter,
  voidStay as decideStay,
  voidWardStay as decideWardStay,
} from "../../domain/timeline/void-entry.ts";
import type { Act } from "../act.ts";
import { changePatient } from "./change-patient.ts";

/** Why an entry is voided, and the version that the person saw, when they saw one. */
interface Voiding {
  readonly reason: string;
  readonly seenVersion?: number | undefined;
}

/** Voids a stay that was recorded in error, with everything in it. */
export function voidStay(act: Act, input: { stayId: number } & Voiding): Promise<{ stayId: number; version: number }> {
  const { stayId, reason, seenVersion } = input;
  return changePatient(act, {
    action: "void-stay",
    key: { stayId },
    subject: { kind: "stay", id: stayId, seenVersion },
    details: {},
    reason,
    decide: (timeline) => ({ timeline: decideStay(timeline, stayId, reason), answer: { stayId } }),
  });
}

/** Voids a ward stay: the patient was not there. Refuses `first-ward-stay` for the only one. */
export function voidWardStay(
  act: Act,
  input: { wardStayId: number } & Voiding,
): Promise<{ wardStayId: number; version: number }> {
  const { wardStayId, reason, seenVersion } = input;
  return changePatient(act, {
    action: "void-ward-stay",
    key: { wardStayId },
    subject: { kind: "ward-stay", id: wardStayId, seenVersion },
    details: {},
    reason,
    decide: (timeline) => ({ timeline: decideWardStay(timeline, wardStayId, reason), answer: { wardStayId } }),
  });
}

/** Voids a catheter that was recorded in error. */
export function voidCatheter(
  act: Act,
  input: { catheterId: number } & Voiding,
): Promise<{ catheterId: number; version: number }> {
  const { catheterId, reason, seenVersion } = input;
  return changePatient(act, {
    action: "void-catheter",
    key: { catheterId },
    subject: { kind: "catheter", id: catheterId, seenVersion },
    details: {},
    reason,
    decide: (timeline) => ({ timeline: decideCatheter(timeline, catheterId, reason), answer: { catheterId } }),
  });
}
