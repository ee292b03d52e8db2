import type { SignFinding, SignName } from "../../../shared/culture-words.ts";
import { Problem } from "../../../shared/problems.ts";
import type { Temperature } from "../criteria/index.ts";
import { type DayNumber, dayText, type Instant } from "../days/day-number.ts";
import { readLocalTime } from "../days/local-time.ts";
import type { Zone } from "../days/zone.ts";
import { type Entry, type Mark, newEntry, revise } from "../timeline/timeline.ts";

/** What is known of a sign on a day, or, by a chart review, on the days from `day` to `lastDay`. */
export interface RecordedSign extends Entry {
  /** The patient it was recorded for, also after a merge. */
  readonly patientId: number;
  readonly sign: SignName;
  readonly day: DayNumber;
  /** The instant on that day; null where nobody knows the hour. */
  readonly at: Instant | null;
  readonly finding: SignFinding;
  /** Of the sign `temperature` alone. */
  readonly temperature: Temperature | null;
  /** Another cause of it was recognized. */
  readonly otherCause: boolean;
  /** Of a chart review (`not-documented`) alone: the last day that it is about (null: `day`), and when the chart was read. */
  readonly lastDay: DayNumber | null;
  readonly readAt: Instant | null;
  /** When it was first written down, and by whom. */
  readonly writtenAt: Instant;
  readonly writtenBy: number;
}

/** What a new sign says. */
export type SignText = Pick<
  RecordedSign,
  "sign" | "day" | "at" | "finding" | "temperature" | "otherCause" | "lastDay" | "readAt" | "marks"
>;

/** What a correction changes. */
export type SignChanges = Partial<Omit<SignText, "sign" | "marks">>;

/** A new sign. */
export function newSign(
  writing: Pick<RecordedSign, "id" | "patientId" | "writtenAt" | "writtenBy">,
  text: SignText,
): RecordedSign {
  return { ...newEntry, ...text, ...writing };
}

/** A sign with changes; `marks` are those of its new time and stand in the place of the old ones. */
export function correctSign(sign: RecordedSign, changes: SignChanges, marks: readonly Mark[]): RecordedSign {
  const isMoved = changes.day !== undefined || changes.at !== undefined || marks.length > 0;
  return revise(sign, { ...changes, marks: isMoved ? marks : sign.marks });
}

/**
 * The instant of a time of day, `HH:MM`, on a facility day. One that occurs twice is the earlier instant and marked.
 * Refuses `time-does-not-exist`, and `time-unreadable` for a year that no record reaches, at `pointer`.
 */
export function instantOfDay(
  day: DayNumber,
  time: string,
  { zone, pointer }: { zone: Zone; pointer: string },
): { at: Instant; marks: readonly Mark[] } {
  try {
    const { instant, repeated } = readLocalTime(`${dayText(day)}T${time}`, zone);
    return { at: instant, marks: repeated ? ["repeated-hour:at"] : [] };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    const [first, ...more] = error.faults.map((fault) => ({ ...fault, pointer }));
    throw first ? new Problem(first, ...more) : error;
  }
}
