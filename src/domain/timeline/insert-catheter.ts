import { checkStay } from "./check-stay.ts";
import { stayOf } from "./find-entry.ts";
import { type Catheter, newEntry, type PatientTimeline, withStay } from "./timeline.ts";

/** What may be said of a catheter when it is first recorded; what is left out is not recorded. */
export type Insertion = Pick<Catheter, "kind" | "insertedAt" | "inPlaceOnArrival"> &
  Partial<
    Pick<
      Catheter,
      | "number"
      | "removedAt"
      | "removedAfterAt"
      | "removedBeforeAt"
      | "lastSeenAt"
      | "indication"
      | "sizeFr"
      | "balloonMl"
      | "insertionRecord"
      | "marks"
    >
  > & { readonly stayId: number; readonly catheterId: number };

/**
 * A catheter put in, or found in place on arrival. Refuses what cannot be true of it and its stay, such as
 * `outside-stay`, `insertion-unknown` or `removal-before-insertion`.
 */
export function insertCatheter(timeline: PatientTimeline, insertion: Insertion): PatientTimeline {
  const { stayId, catheterId, ...said } = insertion;
  const stay = stayOf(timeline, stayId);
  const catheter: Catheter = {
    ...newEntry,
    number: null,
    removedAt: null,
    removedAfterAt: null,
    removedBeforeAt: null,
    lastSeenAt: null,
    indication: null,
    sizeFr: null,
    balloonMl: null,
    ...said,
    id: catheterId,
  };
  return checkStay(withStay(timeline, { ...stay, catheters: [...stay.catheters, catheter] }), stayId);
}
