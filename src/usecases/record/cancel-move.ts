import { cancelMove as decide } from "../../domain/timeline/cancel-move.ts";
import type { Act } from "../act.ts";
import { changePatient } from "./change-patient.ts";

/** Takes a move back: the patient stayed where they were. Refuses `first-ward-stay`. */
export function cancelMove(
  act: Act,
  input: { wardStayId: number; reason: string; seenVersion?: number | undefined },
): Promise<{ wardStayId: number; version: number }> {
  const { wardStayId, reason, seenVersion } = input;
  return changePatient(act, {
    action: "cancel-move",
    key: { wardStayId },
    subject: { kind: "ward-stay", id: wardStayId, seenVersion },
    details: {},
    reason,
    decide: (timeline) => ({ timeline: decide(timeline, input), answer: { wardStayId } }),
  });
}
