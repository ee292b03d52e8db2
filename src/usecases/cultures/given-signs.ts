import type { SignFinding, SignName } from "../../../shared/culture-words.ts";
import { type Fault, Problem } from "../../../shared/problems.ts";
import { readTemperature, type Temperature } from "../../domain/criteria/index.ts";
import { instantOfDay } from "../../domain/cultures/sign.ts";
import type { DayNumber, Instant } from "../../domain/days/day-number.ts";
import type { Zone } from "../../domain/days/zone.ts";
import type { Mark } from "../../domain/timeline/timeline.ts";
import { futureFaults } from "../act.ts";
import type { DaysOfPatient } from "./change-culture.ts";

/** A sign of a day as somebody gives it. */
export interface GivenSign {
  readonly sign: SignName;
  /** `HH:MM`, local to the facility. */
  readonly time?: string | undefined;
  readonly finding: SignFinding;
  /** As it was measured, such as `38.4 °C` or `101.1 F`. */
  readonly temperature?: string | undefined;
  readonly otherCause?: boolean | undefined;
}

/** When a sign of a day was, with what is wrong about it: `time-unreadable` (its year), `time-does-not-exist`, `in-the-future`. */
export function momentOf(
  { day, time }: { day: DayNumber; time: string | null },
  { zone, now, pointer }: { zone: Zone; now: Instant; pointer: string },
): { at: Instant | null; marks: readonly Mark[]; faults: Fault[] } {
  if (time === null) return { at: null, marks: [], faults: [] };
  try {
    const { at, marks } = instantOfDay(day, time, { zone, pointer });
    return { at, marks, faults: futureFaults(now, { at }).map((fault) => ({ ...fault, pointer })) };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return { at: null, marks: [], faults: [...error.faults] };
  }
}

/** What is wrong about the days of a chart review: a day that has not come or is outside all stays, a reading to come. */
export function reviewFaults(
  { lastDay, readAt }: { lastDay: DayNumber | null; readAt: Instant | null },
  { days, now }: { days: Pick<DaysOfPatient, "faultsOf">; now: Instant },
): Fault[] {
  return [
    ...(lastDay === null ? [] : days.faultsOf(lastDay, "/lastDay")),
    ...(readAt === null ? [] : futureFaults(now, { readAt })),
  ];
}

/** A temperature as it was written, never converted; with `field-unreadable` for what has another form. */
export function temperatureOf(
  written: string | null,
  pointer: string,
): { temperature: Temperature | null; faults: Fault[] } {
  const temperature = written === null ? null : readTemperature(written);
  if (written === null || temperature !== null) return { temperature, faults: [] };
  const detail = "Write one temperature with at most two decimals, such as 38.4 °C or 101.1 °F.";
  return { temperature: null, faults: [{ code: "field-unreadable", pointer, detail }] };
}
