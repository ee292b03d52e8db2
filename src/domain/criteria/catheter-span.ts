import type { DayNumber } from "../days/day-number.ts";
import type { CatheterTime, Removal } from "./surveillance-timeline.ts";

/** A urethral indwelling catheter, or several that follow each other without a gap, in one world. */
export interface CatheterSpan {
  readonly first: DayNumber;
  readonly last: DayNumber;
  /** Still in place on the day of the question. */
  readonly isOpen: boolean;
  readonly time: CatheterTime;
}

/**
 * Catheters that follow each other without a moment between them are in place as one. Each is looked at beside the one
 * that ends last of those before it: another that ended long ago may stand between the two.
 */
export function uniteTouching(spans: readonly CatheterSpan[]): CatheterSpan[] {
  const united: CatheterSpan[] = [];
  for (const span of spans.toSorted(byStart)) {
    const start = span.time.start?.at ?? null;
    const ends = united.map(endOf);
    const end = Math.max(...ends);
    const at = ends.indexOf(end);
    const before = united[at];
    if (!before || start === null || end < start) united.push(span);
    else united[at] = unitedSpan(before, span, end);
  }
  return united;
}

function endOf({ isOpen, time }: CatheterSpan): number {
  return isOpen ? Number.POSITIVE_INFINITY : lastInPlace(time.end);
}

/** The last instant at which a catheter is known to have been in place; of one that is out on an unknown hour none. */
function lastInPlace(end: Removal | null): number {
  return end?.at ?? end?.between?.after ?? Number.NEGATIVE_INFINITY;
}

/** Two spans as one: it ends with the later of the two, and whichever may have ended later keeps that in doubt. */
function unitedSpan(before: CatheterSpan, after: CatheterSpan, endAt: number): CatheterSpan {
  const { end: otherEnd } = after.time;
  const otherAt = lastInPlace(otherEnd);
  const endsLater = otherEnd === null || otherAt === Number.NEGATIVE_INFINITY || otherAt > endAt;
  const later = endsLater && !before.isOpen ? otherEnd : before.time.end;
  const latest = Math.max(...[before, after].map(({ time }) => time.latestEndDay ?? Number.NEGATIVE_INFINITY));
  const latestEndDay = later !== null && latest >= later.day ? latest : null;
  return {
    first: before.first,
    last: Math.max(before.last, after.last),
    isOpen: later === null,
    time: { ...before.time, end: later && openUntil(later, [before.time.end, otherEnd]), latestEndDay },
  };
}

/** The end, open as long as one of the removals is: `before` is the last of the instants at which each was gone. */
function openUntil(end: Removal, removals: readonly (Removal | null)[]): Removal {
  const gone = Math.max(...removals.map((one) => one?.between?.before ?? Number.NEGATIVE_INFINITY));
  const after = lastInPlace(end);
  return gone > after ? { day: end.day, at: null, between: { after, before: gone } } : end;
}

function byStart(a: CatheterSpan, b: CatheterSpan): number {
  return a.first - b.first || (a.time.start?.at ?? 0) - (b.time.start?.at ?? 0) || a.time.id - b.time.id;
}
