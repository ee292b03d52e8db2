import type { Determination, Subject } from "./determination.ts";
import { determine, summaryOf } from "./determine.ts";
import type { Edition } from "./edition.ts";
import type { SurveillanceTimeline } from "./surveillance-timeline.ts";

/** A subject of which two editions say something else; null where one of them does not judge it at all. */
export interface Difference {
  readonly subject: Subject;
  readonly before: Determination | null;
  readonly after: Determination | null;
}

/** Which determinations of a patient would change from one edition to another. */
export function differenceBetween(timeline: SurveillanceTimeline, from: Edition, to: Edition): Difference[] {
  return changedDeterminations(determine(timeline, from), determine(timeline, to));
}

/** Which of a patient's determinations differ: the old ones held against the new ones, subject by subject. */
export function changedDeterminations(before: readonly Determination[], after: readonly Determination[]): Difference[] {
  const found = new Map<string, Difference>();
  const keyOf = ({ subject }: Determination) => `${subject.kind} ${subject.id}`;
  for (const one of before) found.set(keyOf(one), { subject: one.subject, before: one, after: null });
  for (const one of after) {
    const known = found.get(keyOf(one));
    found.set(keyOf(one), { subject: one.subject, before: known?.before ?? null, after: one });
  }
  return [...found.values()].filter(
    ({ before: a, after: b }) => a === null || b === null || summaryOf(a) !== summaryOf(b),
  );
}
