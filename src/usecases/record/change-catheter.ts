import { boundFaults } from "../../../shared/bounds/bounds.ts";
import { catheterFaults } from "../../../shared/bounds/catheter-faults.ts";
import { type Fault, Problem } from "../../../shared/problems.ts";
import { dayMs, type Instant } from "../../domain/days/day-number.ts";
import type { Zone } from "../../domain/days/zone.ts";
import { type CatheterChanges, correctCatheter } from "../../domain/timeline/correct-entry.ts";
import { catheterOf } from "../../domain/timeline/find-entry.ts";
import { indicationFaults } from "../../domain/timeline/note-text-faults.ts";
import { noHourOfRemoval, removalWithinDay, withRemovalFollowing } from "../../domain/timeline/removal-within-day.ts";
import type { Catheter, Mark, Stay } from "../../domain/timeline/timeline.ts";
import { type Act, notInFuture } from "../act.ts";
import { type CareContext, careContext } from "./care-context.ts";
import { changePatient } from "./change-patient.ts";

export interface ChangeCatheter {
  readonly catheterId: number;
  readonly changes: CatheterChanges;
  /** Pointers of unusual values that somebody has checked. */
  readonly confirm: readonly string[];
  readonly reason: string;
  readonly seenVersion?: number | undefined;
  readonly marks?: readonly Mark[];
}

/**
 * Corrects what was said of a catheter, with the checks of its first recording. What was not changed is not judged again.
 * Refuses `stale-version`, `indication-unknown`, `out-of-bounds`, `unusual-value` and what contradicts the record.
 */
export function changeCatheter(act: Act, input: ChangeCatheter): Promise<{ catheterId: number; version: number }> {
  const { catheterId, changes, confirm, reason, seenVersion, marks = [] } = input;
  const { insertedAt, removedAt, removedAfterAt, removedBeforeAt, lastSeenAt, insertionRecord, removalRecord } =
    changes;
  notInFuture(act.now, { insertedAt, removedAt, removedAfterAt, removedBeforeAt, lastSeenAt });
  let care: CareContext;
  return changePatient(act, {
    action: "correct-catheter",
    key: { catheterId },
    subject: { kind: "catheter", id: catheterId, seenVersion },
    details: { fields: Object.keys(changes) },
    reason,
    first: async (tx) => {
      care = await careContext(tx, act.actor.facilityId, { catheterId });
    },
    decide: (timeline) => {
      const { stay, catheter } = catheterOf(timeline, catheterId);
      const at = insertedAt ?? catheter.insertedAt ?? stay.admittedAt;
      const { sizeFr, balloonMl = catheter.balloonMl } = changes;
      const given = { kind: changes.kind ?? catheter.kind, ageDays: care.ageDays(at), confirm };
      const own = { sizeFr, balloonMl: changes.balloonMl };
      const [first, ...more] = [
        ...indicationFaults("/indication", changes.indication, care.policyAt(stay, at)),
        ...catheterFaults({ ...own, ...insertionRecord }, { ...given, at: "/insertionRecord" }),
        ...dwellFaults(stay, changes, confirm),
        ...catheterFaults({ ...removalRecord }, { ...given, at: "/removalRecord", balloonMl }),
      ];
      if (first) throw new Problem(first, ...more);
      const said = withRemovalDay(catheter, { ...changes, marks }, { zone: care.zone, now: act.now });
      return { timeline: correctCatheter(timeline, catheterId, said), answer: { catheterId } };
    },
  });
}

type Said = CatheterChanges & { readonly marks: readonly Mark[] };

/** The changes, with a removal of which the day alone is known between two times of its day. */
function withRemovalDay(catheter: Catheter, said: Said, at: { zone: Zone; now: Instant }): Said {
  const { marks, ...changes } = said;
  const after = { ...catheter, ...changes };
  if (marks.includes(noHourOfRemoval) && after.removedAt !== null)
    return { ...said, ...removalWithinDay(after.removedAt, [after], at) };
  if (["removedAt", "removedAfterAt", "removedBeforeAt"].some((field) => field in changes)) return said;
  const { removedAfterAt } = withRemovalFollowing(after, at.zone);
  return removedAfterAt === catheter.removedAfterAt
    ? said
    : { ...said, removedAfterAt, marks: [...marks, noHourOfRemoval] };
}

/** An insertion long before the admission is more often a slip of the year than a catheter of that age. */
function dwellFaults(stay: Stay, { insertedAt }: CatheterChanges, confirm: readonly string[]): Fault[] {
  if (insertedAt == null || insertedAt >= stay.admittedAt) return [];
  const days = { quantity: "dwellDaysAtArrival", value: (stay.admittedAt - insertedAt) / dayMs } as const;
  return boundFaults([{ ...days, pointer: "/insertedAt" }], { ageDays: null, confirmed: confirm });
}
