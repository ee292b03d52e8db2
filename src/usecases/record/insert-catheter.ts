import { insertCatheter as decide, type Insertion } from "../../domain/timeline/insert-catheter.ts";
import { type Act, notInFuture } from "../act.ts";
import { changePatient } from "./change-patient.ts";

/** What is said of a catheter when it is first recorded. */
export type InsertCatheter = Omit<Insertion, "catheterId" | "marks">;

/**
 * Records a catheter put in, or found in place on arrival.
 * Refuses `insertion-unknown`, `outside-stay`, `removal-before-insertion`, `in-the-future`.
 */
export function insertCatheter(act: Act, input: InsertCatheter): Promise<{ catheterId: number }> {
  const { insertedAt, removedAt, lastSeenAt, removedBeforeAt, removedAfterAt } = input;
  notInFuture(act.now, { insertedAt, removedAt, lastSeenAt, removedBeforeAt, removedAfterAt });
  return changePatient(act, {
    action: "insert-catheter",
    key: { stayId: input.stayId },
    details: { stayId: input.stayId },
    decide: (timeline, newId) => {
      const catheterId = newId();
      return { timeline: decide(timeline, { ...input, catheterId }), answer: { catheterId } };
    },
  });
}
