import type { Month } from "../../../shared/day.ts";
import type { DayNumber, Instant } from "../days/day-number.ts";
import { monthsFromTo } from "../days/month.ts";
import { changedStretches, runningOn } from "../timeline/changed-stretches.ts";
import type { PatientTimeline } from "../timeline/timeline.ts";
import type { NoteChange } from "./plan.ts";
import type { CultureChanges } from "./plan-cultures.ts";

/** A culture or a sign can belong to an event up to this many days earlier. */
const eventDays = 3;

/** The months of which storing lines would change or add entries, up to `today`, in order. */
export function monthsTouched(
  planned: {
    changes: readonly { readonly before: PatientTimeline; readonly after: PatientTimeline }[];
    notes: readonly NoteChange[];
    cultures: CultureChanges;
  },
  { dayOf, today }: { dayOf: (at: Instant) => DayNumber; today: DayNumber },
): Month[] {
  const { changes, notes, cultures } = planned;
  const stretches = changes.flatMap(({ before, after }) => runningOn(changedStretches(before, after), before, after));
  const states = <T>(list: readonly { readonly old: T | null; readonly now: T }[]): T[] =>
    list.flatMap(({ old, now }) => (old === null ? [now] : [old, now]));
  const days = [
    ...stretches.map(({ from, to }) => ({ first: dayOf(from), last: to === null ? today : dayOf(to) })),
    ...states(notes).map(({ at }) => ({ first: dayOf(at), last: dayOf(at) })),
    ...states(cultures.specimens).map(({ collectedAt }) => around(dayOf(collectedAt))),
    ...states(cultures.signs).map(({ day }) => around(day)),
  ];
  return [...new Set(days.flatMap(({ first, last }) => monthsFromTo({ first, last: Math.min(last, today) })))].sort();
}

function around(day: DayNumber): { first: DayNumber; last: DayNumber } {
  return { first: day - eventDays, last: day };
}
