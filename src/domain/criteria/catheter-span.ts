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
 * that ends last of those before it that it touches: another that ended long ago may be between the two.
 */
export function uniteTouching(spans: readonly CatheterSpan[]): CatheterSpan[] {
  const united: CatheterSpan[] = [];
  for (const span of spans.toSorted(byStart)) {
    const [before] = united.filter((one) => touches(one, span)).sort((a, b) => (endsAfter(a, b) ? -1 : 1));
    if (before) united[united.indexOf(before)] = unitedSpan(before, span);
    else united.push(span);
  }
  return united;
}

/**
 * Whether a catheter is known to have been in place still when a later one came. Where one of the two hours is not known,
 * only a later day tells that. Two that begin on one day stay apart where one of the hours is not known: as one they would
 * begin at the hour of one of them, and a known hour must hide no unknown one, nor an unknown hour a known one.
 */
function touches({ isOpen, time: { start: from, end } }: CatheterSpan, { time: { start } }: CatheterSpan): boolean {
  if (start === null || (start.at === null && from?.day === start.day)) return false;
  if (isOpen) return true;
  if (end === null) return false;
  const at = lastInPlace(end);
  return at !== null && start.at !== null ? at >= start.at : end.day > start.day;
}

/** The last instant at which a catheter is known to have been in place; of one that is out on an unknown hour none. */
function lastInPlace({ at, between }: Removal): number | null {
  return at ?? between?.after ?? null;
}

/** Whether a span ends later than another one, or may: of one day an hour that is not known may be the later. */
function endsAfter(one: CatheterSpan, other: CatheterSpan): boolean {
  const [end, otherEnd] = [one.time.end, other.time.end];
  if (other.isOpen || end === null) return !other.isOpen && one.isOpen;
  if (otherEnd === null) return true;
  const [at, otherAt] = [lastInPlace(end), lastInPlace(otherEnd)];
  if (at !== null && otherAt !== null) return at > otherAt;
  return end.day > otherEnd.day || (end.day === otherEnd.day && at === null && otherAt !== null);
}

/** Two spans as one: it ends with the later of the two, and whichever may have ended later keeps that in doubt. */
function unitedSpan(before: CatheterSpan, after: CatheterSpan): CatheterSpan {
  const later = endsAfter(after, before) ? after.time.end : before.time.end;
  const latest = Math.max(...[before, after].map(({ time }) => time.latestEndDay ?? Number.NEGATIVE_INFINITY));
  const latestEndDay = later !== null && latest >= later.day ? latest : null;
  return {
    first: before.first,
    last: Math.max(before.last, after.last),
    isOpen: later === null,
    time: { ...before.time, end: later && openUntil(later, [before.time.end, after.time.end]), latestEndDay },
  };
}

/** The end, open as long as one of the removals is: `before` is the last of the instants at which each was gone. */
function openUntil(end: Removal, removals: readonly (Removal | null)[]): Removal {
  const gone = Math.max(...removals.map((one) => one?.between?.before ?? Number.NEGATIVE_INFINITY));
  const after = lastInPlace(end);
  return after !== null && gone > after ? { day: end.day, at: null, between: { after, before: gone } } : end;
}

/** By day and hour; one whose hour is not known comes after those of its day, and before them where nobody knows its day. */
function byStart(a: CatheterSpan, b: CatheterSpan): number {
  const [from, otherFrom] = [startAt(a), startAt(b)];
  return a.first - b.first || (from === otherFrom ? a.time.id - b.time.id : from - otherFrom);
}

function startAt({ time: { start } }: CatheterSpan): number {
  if (start === null) return Number.NEGATIVE_INFINITY;
  return start.at ?? Number.POSITIVE_INFINITY;
}
