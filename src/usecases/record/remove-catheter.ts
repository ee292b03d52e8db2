import { removeCatheter as decide, type Removal } from "../../domain/timeline/remove-catheter.ts";
import { type Act, notInFuture } from "../act.ts";
import { changePatient } from "./change-patient.ts";

/**
 * Records a removal: at an instant, or found out between two.
 * Refuses `already-removed`, `removal-before-insertion`, `seen-after-removal`.
 */
export function removeCatheter(
  act: Act,
  input: Removal & { readonly seenVersion?: number | undefined },
): Promise<{ catheterId: number; version: number }> {
  const { catheterId, seenVersion } = input;
  notInFuture(act.now, "at" in input ? { at: input.at } : { after: input.after, before: input.before });
  return changePatient(act, {
    action: "remove-catheter",
    key: { catheterId },
    subject: { kind: "catheter", id: catheterId, seenVersion },
    details: {},
    decide: (timeline) => ({ timeline: decide(timeline, input), answer: { catheterId } }),
  });
}
