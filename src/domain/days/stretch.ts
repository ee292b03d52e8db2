import type { Instant } from "./day-number.ts";

/** A stretch of time. Its end is left out and may be `Infinity` while it still lasts. */
export type Stretch = { readonly start: Instant; readonly end: Instant };

/**
 * All time that lies in at least one of the stretches, as sorted stretches that neither overlap nor touch.
 * The list may be in any order; empty stretches vanish. Throws an Error for a stretch that ends before it starts.
 */
export function uniteStretches(list: readonly Stretch[]): Stretch[] {
  const united: { start: Instant; end: Instant }[] = [];
  for (const { start, end } of list.toSorted((a, b) => a.start - b.start)) {
    if (!(start <= end)) throw new Error(`A stretch of time cannot end (${end}) before it starts (${start})`);
    if (start === end) continue;
    const last = united.at(-1);
    if (last === undefined || last.end < start) united.push({ start, end });
    else last.end = Math.max(last.end, end);
  }
  return united;
}

/** All time that lies in both lists, as sorted stretches that neither overlap nor touch. Lists as above. */
export function intersectStretches(a: readonly Stretch[], b: readonly Stretch[]): Stretch[] {
  const ours = uniteStretches(a);
  const theirs = uniteStretches(b);
  const shared: Stretch[] = [];
  let i = 0;
  let j = 0;
  for (let one = ours[i], other = theirs[j]; one && other; one = ours[i], other = theirs[j]) {
    const start = Math.max(one.start, other.start);
    const end = Math.min(one.end, other.end);
    if (start < end) shared.push({ start, end });
    if (one.end < other.end) i++;
    else j++;
  }
  return shared;
}
