import type { CensusTime } from "../../../shared/day.ts";
import { type DayNumber, dayMs, type Instant } from "./day-number.ts";
import type { Zone } from "./zone.ts";

/** A census time and the first day on which it is used. */
export type CensusChange = { readonly fromDay: DayNumber; readonly time: CensusTime };

/**
 * The censuses of a range of days, in the order of days: census `i` is that of day `days[i]`, taken at `instants[i]`.
 * A day without a census is left out. Instants never fall, but two may be equal where the census time was changed
 * from the end of a day to the start of the next.
 */
export type CensusTable = { readonly days: Int32Array; readonly instants: Float64Array };

/**
 * The instant of a day's census: the first one at or after the census time on that date, so that a time which the
 * clocks skipped or repeated still gives one census, and it keeps its nominal day. `24:00` is the first instant whose
 * date is later. Null for a date that the zone skipped: nobody was there to be counted.
 */
export function censusInstant(zone: Zone, day: DayNumber, time: CensusTime): Instant | null {
  return censusAt(zone, day, timeOfDayMs(time));
}

/**
 * The censuses of the days from `first` to `last`, both included. The changes may come in any order; the earliest also
 * holds for the days before it, because the time with which a hospital starts has no beginning.
 * Throws an Error when there is no change at all or two for the same day.
 */
export function censusTable(
  zone: Zone,
  changes: readonly CensusChange[],
  first: DayNumber,
  last: DayNumber,
): CensusTable {
  const ordered = inOrder(changes);
  const days: DayNumber[] = [];
  const instants: Instant[] = [];
  for (const [i, change] of ordered.entries()) {
    const from = i === 0 ? first : Math.max(first, change.fromDay);
    const to = Math.min(last, (ordered[i + 1]?.fromDay ?? Number.POSITIVE_INFINITY) - 1);
    const timeMs = timeOfDayMs(change.time);
    for (let day = from; day <= to; day++) {
      const instant = censusAt(zone, day, timeMs);
      if (instant === null) continue;
      days.push(day);
      instants.push(instant);
    }
  }
  return { days: Int32Array.from(days), instants: Float64Array.from(instants) };
}

/**
 * The censuses at which somebody was present who came at `start` and was gone at `end`: those with
 * start <= census < end, as the indexes from `from` up to but without `to`. `to - from` is their number.
 */
export function censusesWithin(table: CensusTable, start: Instant, end: Instant): { from: number; to: number } {
  if (!(start <= end)) throw new Error(`A stretch of time cannot end (${end}) before it starts (${start})`);
  return { from: firstFrom(table.instants, start), to: firstFrom(table.instants, end) };
}

function censusAt(zone: Zone, day: DayNumber, timeMs: number): Instant | null {
  const instant = zone.firstInstantFrom(day * dayMs + timeMs);
  // The common case answers without a second look-up; only a census that has left its date needs the question.
  return zone.dayOf(instant) === day || zone.startOfDay(day) !== null ? instant : null;
}

function timeOfDayMs(time: CensusTime): number {
  return Number(time.slice(0, 2)) * 3_600_000 + Number(time.slice(3)) * 60_000;
}

function inOrder(changes: readonly CensusChange[]): readonly CensusChange[] {
  if (changes.length === 0) throw new Error("A facility without a census time cannot be counted");
  const ordered = changes.toSorted((a, b) => a.fromDay - b.fromDay);
  if (new Set(ordered.map((change) => change.fromDay)).size < ordered.length) {
    throw new Error("Two census times start on the same day");
  }
  return ordered;
}

/**
 * The index of the first instant that is not before `instant`; the length when all are. Censuses lie a day apart but
 * for changes of clocks and census times, so a guess is a step or two off at most; a skipped date adds one.
 */
function firstFrom(instants: Float64Array, instant: Instant): number {
  const guess = Math.ceil((instant - (instants[0] ?? instant)) / dayMs);
  let i = Math.min(Math.max(guess, 0), instants.length);
  while (i < instants.length && (instants[i] as Instant) < instant) i++;
  while (i > 0 && (instants[i - 1] as Instant) >= instant) i--;
  return i;
}
