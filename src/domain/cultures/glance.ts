import { signNames } from "../../../shared/culture-words.ts";
import { type Sign, type SurveillanceTimeline, temperatureText } from "../criteria/index.ts";
import type { DayNumber } from "../days/day-number.ts";

/** One day of a patient, as far as a glance needs it. */
export interface GlanceDay {
  readonly day: DayNumber;
  /** The ward where the patient was last; null on none. */
  readonly wardId: number | null;
  /** An indwelling urethral catheter was in place for some part of the day. */
  readonly catheter: boolean;
  /** Signs that were present, in words. */
  readonly signs: readonly string[];
  readonly urine: number;
  readonly blood: number;
}

/** How many days before the day of collection, and after it, a glance shows. Together with it they are 14. */
const daysBefore = 10;
const daysAfter = 3;

/** A patient's days around a day of collection. */
export function glanceAround(timeline: SurveillanceTimeline, day: DayNumber): GlanceDay[] {
  return Array.from({ length: daysBefore + 1 + daysAfter }, (_, i) => glanceOf(timeline, day - daysBefore + i));
}

function glanceOf(timeline: SurveillanceTimeline, day: DayNumber): GlanceDay {
  const { stays, signs, specimens, knownThrough } = timeline;
  const lasts = (first: DayNumber, last: DayNumber | undefined) => first <= day && day <= (last ?? knownThrough);
  const times = stays.flatMap(({ wardTimes }) => wardTimes).filter(({ start, end }) => lasts(start.day, end?.day));
  const last = times.toSorted((a, b) => a.start.day - b.start.day || (a.start.at ?? 0) - (b.start.at ?? 0)).at(-1);
  const collected = specimens.filter((one) => one.collected.day === day);
  return {
    day,
    wardId: last?.wardId ?? null,
    catheter: catheterOn(timeline, day),
    signs: signs.filter(({ when, finding }) => when.day === day && finding === "present").map(signWords),
    urine: collected.filter(({ kind }) => kind === "urine").length,
    blood: collected.filter(({ kind }) => kind === "blood").length,
  };
}

/** Whether an indwelling urethral catheter was in place for some part of a day, as far as that is known. */
export function catheterOn({ stays, catheters, knownThrough }: SurveillanceTimeline, day: DayNumber): boolean {
  const arrived = Math.min(...stays.flatMap(({ wardTimes }) => wardTimes.map(({ start }) => start.day)));
  return catheters.some(
    ({ kind, start, end }) =>
      kind === "indwelling-urethral" && (start?.day ?? arrived) <= day && day <= (end?.day ?? knownThrough),
  );
}

function signWords({ sign, temperature }: Sign): string {
  return temperature === null ? signNames[sign] : temperatureText(temperature);
}
