import type { DayNumber } from "../days/day-number.ts";
import type { CriterionSign } from "./rule-kinds.ts";
import type { CatheterTime, Moment, Removal, Sign } from "./surveillance-timeline.ts";

/** Symptoms that a catheter may cause itself: they count only while none is in place. CDC Patient Safety Component Manual, chapter 7. */
export const symptomsWithoutCatheter: ReadonlySet<CriterionSign | Sign["sign"]> = new Set([
  "urgency",
  "frequency",
  "dysuria",
] as const);

/** A day on which an indwelling urethral catheter came or went at an hour that is not known. */
export interface DoubtfulHour {
  readonly catheterId: number;
  readonly what: "insertion" | "removal";
  readonly day: DayNumber;
  /** false: it may have come out on another day as well. */
  readonly isDayKnown: boolean;
  readonly between?: Removal["between"];
}

/** The days on which the hour of an insertion or a removal is not known, so that a symptom of that day is in doubt. */
export function doubtfulHours(catheters: readonly CatheterTime[]): DoubtfulHour[] {
  return catheters.flatMap(({ id: catheterId, kind, start, end, latestEndDay }): DoubtfulHour[] => {
    if (kind !== "indwelling-urethral") return [];
    const isDayKnown = latestEndDay === null;
    const removals = [...(end?.at === null ? [end.day] : []), ...(latestEndDay === null ? [] : [latestEndDay])];
    return [
      ...(start?.at === null ? [{ catheterId, what: "insertion" as const, day: start.day, isDayKnown: true }] : []),
      ...removals.map((day) => ({ catheterId, what: "removal" as const, day, isDayKnown, between: end?.between })),
    ];
  });
}

/** Whether it is open on which side of such an hour a moment is. */
export function leavesOpen({ day, between }: DoubtfulHour, when: Moment): boolean {
  if (when.day !== day) return false;
  return when.at === null || between === undefined || (between.after < when.at && when.at < between.before);
}
