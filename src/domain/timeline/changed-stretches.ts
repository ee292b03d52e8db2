import { dayMs, type Instant } from "../days/day-number.ts";
import { beginning } from "./first-change.ts";
import type { Catheter, Entry, PatientTimeline, Stay, WardStay } from "./timeline.ts";

/** A stretch of time; `to` null: it lasts. */
export interface ChangedStretch {
  readonly from: Instant;
  readonly to: Instant | null;
}

/** An entry as a stretch: its fields that only say when it ended, and the instants that they name. */
interface Spanned<T> {
  readonly endFields: readonly (keyof T)[];
  readonly ends: (entry: T) => readonly (Instant | null)[];
  readonly start: (entry: T) => Instant;
  readonly end: (entry: T) => Instant | null;
}

/**
 * The stretches of time of which two states of a timeline tell something else. Of an entry of which only the end is
 * another, the time before both ends is told as it was. A move also decides about the time off the wards beside it.
 */
export function changedStretches(before: PatientTimeline, after: PatientTimeline): ChangedStretch[] {
  const old = new Map(before.stays.map((stay) => [stay.id, stay]));
  return after.stays.flatMap((stay) => {
    const was = old.get(stay.id);
    if (was === stay) return [];
    return [
      ...(was?.version === stay.version ? [] : [changed(ofStay, was, stay)]),
      ...entriesChanged(was?.wardStays ?? [], stay.wardStays, ofWardStay(was, stay)),
      ...entriesChanged(was?.catheters ?? [], stay.catheters, ofCatheter(stay)),
    ];
  });
}

/** A removal and an insertion on the next day are less than this apart, also where a clock is set back. */
const mostBetween = 3 * dayMs;

/**
 * The same stretches, each to the end of the catheters that follow without a day between them: eligibility days run on
 * across catheters and stays, so a change of one decides the days of the next. `states` are the patient's stays before and after.
 */
export function runningOn(stretches: readonly ChangedStretch[], ...states: PatientTimeline[]): ChangedStretch[] {
  const catheters = states
    .flatMap(({ stays }) => stays)
    .flatMap((stay) =>
      stay.catheters.map((one) => ({ from: ofCatheter(stay).start(one), to: ofCatheter(stay).end(one) })),
    )
    .sort((a, b) => a.from - b.from);
  return stretches.map(({ from, to }) => ({
    from,
    to: catheters.reduce<Instant | null>((end, next) => {
      if (end === null || next.from > end + mostBetween) return end;
      return next.to === null ? null : Math.max(end, next.to);
    }, to),
  }));
}

function entriesChanged<T extends Entry>(before: readonly T[], after: readonly T[], of: Spanned<T>): ChangedStretch[] {
  const old = new Map(before.map((entry) => [entry.id, entry]));
  return after.flatMap((entry) => {
    const was = old.get(entry.id);
    return was === entry || was?.version === entry.version ? [] : [changed(of, was, entry)];
  });
}

function changed<T extends Entry>(of: Spanned<T>, was: T | undefined, now: T): ChangedStretch {
  const states = was ? [was, now] : [now];
  const ends = states.map(of.end);
  const to = ends.some((end) => end === null) ? null : Math.max(...ends.map(Number));
  const starts = states.map(of.start);
  const known = states.flatMap(of.ends).filter((end) => end !== null);
  const from = was && known.length > 0 && isSameButEnd(of, was, now) ? Math.min(...known) : Math.min(...starts);
  return { from, to };
}

function isSameButEnd<T extends Entry>({ endFields }: Spanned<T>, was: T, now: T): boolean {
  const blank = Object.fromEntries([...endFields, "version"].map((field) => [field, null]));
  return JSON.stringify({ ...was, ...blank }) === JSON.stringify({ ...now, ...blank });
}

const ofStay: Spanned<Stay> = {
  // What changed in its entries is told by them.
  endFields: ["dischargedAt", "disposition", "wardStays", "catheters"],
  ends: ({ dischargedAt }) => [dischargedAt],
  start: beginning,
  end: ({ dischargedAt }) => dischargedAt,
};

/** From the end of the ward stay before it to the beginning of the one after it. */
function ofWardStay(was: Stay | undefined, now: Stay): Spanned<WardStay> {
  const all = [...(was?.wardStays ?? []), ...now.wardStays];
  const admitted = Math.min(beginning(now), was ? beginning(was) : Number.POSITIVE_INFINITY);
  return {
    endFields: ["endAt", "absenceAfter"],
    ends: ({ endAt }) => [endAt],
    start: ({ id, startAt }) =>
      all.reduce((last, { id: other, endAt }) => {
        return other !== id && endAt !== null && endAt <= startAt && endAt > last ? endAt : last;
      }, admitted),
    end: ({ id, endAt }) => {
      if (endAt === null) return null;
      const later = all.filter((one) => one.id !== id && one.startAt >= endAt).map(({ startAt }) => startAt);
      return later.length > 0 ? Math.min(...later) : now.dischargedAt;
    },
  };
}

function ofCatheter(stay: Stay): Spanned<Catheter> {
  return {
    endFields: ["removedAt", "removedAfterAt", "removedBeforeAt", "lastSeenAt", "removalRecord", "marks", "noted"],
    ends: ({ removedAt, removedAfterAt, lastSeenAt }) => [removedAt, removedAfterAt, lastSeenAt],
    start: ({ insertedAt }) => insertedAt ?? beginning(stay),
    end: ({ removedAt, removedBeforeAt }) => removedAt ?? removedBeforeAt ?? stay.dischargedAt,
  };
}
