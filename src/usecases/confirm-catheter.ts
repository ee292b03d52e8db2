import type { Instant } from "../domain/days/day-number.ts";
import { confirmCatheter as decide } from "../domain/timeline/confirm-catheter.ts";
import { type Act, notInFuture } from "./act.ts";
import { changePatient } from "./change-patient.ts";

/** Somebody saw the catheter in place. Refuses `seen-after-removal`, `seen-before-insertion`. */
export function confirmCatheter(
  act: Act,
  input: { catheterId: number; seenAt: Instant },
): Promise<{ catheterId: number }> {
  const { catheterId, seenAt } = input;
  notInFuture(act.now, { seenAt });
  return changePatient(act, {
    action: "confirm-catheter",
    key: { catheterId },
    details: {},
    decide: (timeline) => ({ timeline: decide(timeline, input), answer: { catheterId } }),
  });
}
