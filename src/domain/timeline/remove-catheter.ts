import { refuse } from "../../../shared/problems.ts";
import type { RemovalRecord } from "../../../shared/records.ts";
import type { Instant } from "../days/day-number.ts";
import { checkStay } from "./check-stay.ts";
import { catheterOf } from "./find-entry.ts";
import { type Mark, markedAnew, type PatientTimeline, revise, withEntry, withStay } from "./timeline.ts";

/** At one instant, or found out between two: still in place at `after`, gone at `before`. */
export type Removal = {
  readonly catheterId: number;
  readonly record?: RemovalRecord | null | undefined;
  readonly marks?: readonly Mark[];
} & ({ readonly at: Instant } | { readonly after: Instant; readonly before: Instant });

/**
 * The catheter is out. Refuses `already-removed`, `removal-before-insertion`, and `seen-after-removal` when somebody
 * saw it in place later.
 */
export function removeCatheter(timeline: PatientTimeline, removal: Removal): PatientTimeline {
  const { stay, catheter } = catheterOf(timeline, removal.catheterId);
  if (catheter.removedAt !== null || catheter.removedBeforeAt !== null)
    refuse("already-removed", "The removal of this catheter is recorded already.", {
      other: `catheter ${catheter.id}`,
    });
  const changes =
    "at" in removal ? { removedAt: removal.at } : { removedAfterAt: removal.after, removedBeforeAt: removal.before };
  const marks = markedAnew(catheter, changes, removal.marks);
  const written = removal.record ? { marks, removalRecord: removal.record } : { marks };
  const catheters = withEntry(stay.catheters, revise(catheter, { ...changes, ...written }));
  return checkStay(withStay(timeline, { ...stay, catheters }), stay.id);
}
