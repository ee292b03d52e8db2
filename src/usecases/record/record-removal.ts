import { catheterFaults } from "../../../shared/bounds/catheter-faults.ts";
import { Problem, refuse } from "../../../shared/problems.ts";
import type { RemovalRecord } from "../../../shared/records.ts";
import type { Instant } from "../../domain/days/day-number.ts";
import { catheterOf } from "../../domain/timeline/find-entry.ts";
import { removeCatheter } from "../../domain/timeline/remove-catheter.ts";
import type { Mark } from "../../domain/timeline/timeline.ts";
import { type Act, notInFuture } from "../act.ts";
import { changePatient } from "./change-patient.ts";

export interface RecordRemoval {
  readonly catheterId: number;
  /** At this time; or found out to lie between the other two. */
  readonly removedAt?: Instant | undefined;
  readonly removedAfterAt?: Instant | undefined;
  readonly removedBeforeAt?: Instant | undefined;
  readonly record?: RemovalRecord | undefined;
  /** Pointers of unusual values that somebody has checked. */
  readonly confirm?: readonly string[] | undefined;
  readonly seenVersion?: number | undefined;
  readonly marks?: readonly Mark[];
}

/**
 * Records a removal with what was written down of it: at an instant, or found out between two.
 * Refuses `removal-unclear`, `already-removed`, `removal-before-insertion`, `seen-after-removal`, `out-of-bounds`,
 * `unusual-value`, `in-the-future`, `stale-version`.
 */
export function recordRemoval(act: Act, input: RecordRemoval): Promise<{ catheterId: number; version: number }> {
  const { catheterId, record, confirm = [], marks = [], seenVersion } = input;
  const { removedAt, removedAfterAt, removedBeforeAt } = input;
  notInFuture(act.now, { removedAt, removedAfterAt, removedBeforeAt });
  const when = whenOf(input);
  return changePatient(act, {
    action: "remove-catheter",
    key: { catheterId },
    subject: { kind: "catheter", id: catheterId, seenVersion },
    details: {},
    decide: (timeline) => {
      const { balloonMl, kind } = catheterOf(timeline, catheterId).catheter;
      const known = { kind, ageDays: null, confirm, at: "/record", balloonMl };
      const [first, ...more] = catheterFaults(record ?? {}, known);
      if (first) throw new Problem(first, ...more);
      return { timeline: removeCatheter(timeline, { catheterId, record, marks, ...when }), answer: { catheterId } };
    },
  });
}

function whenOf({ removedAt, removedAfterAt, removedBeforeAt }: RecordRemoval): WhenRemoved {
  const between = removedAfterAt !== undefined || removedBeforeAt !== undefined;
  if (removedAt !== undefined && !between) return { at: removedAt };
  if (removedAt === undefined && removedAfterAt !== undefined && removedBeforeAt !== undefined)
    return { after: removedAfterAt, before: removedBeforeAt };
  const pointer = removedAt === undefined && !between ? "/removedAt" : "/removedAfterAt";
  return refuse("removal-unclear", "Give the time of the removal, or the two times between which it happened.", {
    pointer,
  });
}

type WhenRemoved = { at: Instant } | { after: Instant; before: Instant };
