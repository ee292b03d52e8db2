import { cancelMove as decide } from "../domain/timeline/cancel-move.ts";
import type { Act } from "./act.ts";
import { changePatient } from "./change-patient.ts";

/** Takes a move back: the patient stayed where they were. Refuses `first-ward-stay`. */
export function cancelMove(act: Act, input: { wardStayId: number; reason: string }): Promise<{ wardStayId: number }> {
  const { wardStayId, reason } = input;
  return changePatient(act, {
    action: "cancel-move",
    key: { wardStayId },
    details: {},
    reason,
    decide: (timeline) => ({ timeline: decide(timeline, input), answer: { wardStayId } }),
  });
}
