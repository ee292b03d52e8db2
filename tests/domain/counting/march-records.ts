import type { CensusTime } from "../../../shared/day.ts";
import type { WardSetting } from "../../../shared/vocabulary.ts";
import type { CountingRules, PatientDayRow } from "../../../src/domain/counting/patient-days.ts";
import { inpatientWards } from "../../../src/domain/counting/ward-setting.ts";
import { censusTable } from "../../../src/domain/days/census.ts";
import { readLocalTime } from "../../../src/domain/days/local-time.ts";
import { zoneNamed } from "../../../src/domain/days/zone.ts";
import type { PatientTimeline } from "../../../src/domain/timeline/timeline.ts";
import { dayOf, textOf } from "../../reference/day-text.ts";
import { timelineOf, wardIds } from "../timeline/written.ts";

/** The zone of the records. */
export const newYork = zoneNamed("America/New_York");
/** An instant of March 2024 by its day and local time. */
export const march = (day: string, time: string) => readLocalTime(`2024-03-${day}T${time}`, newYork).instant;

/** The record that lines say, with `05/08:00` for 8 o'clock on 5 March 2024 in New York. */
export function recordOf(lines: readonly string[]): PatientTimeline {
  const instants = (line: string) => line.replaceAll(/(\d\d)\/(\d\d:\d\d)/g, (_, day, time) => `${march(day, time)}`);
  return timelineOf(...lines.map(instants));
}

const settings = (...changes: readonly (readonly [fromDay: number, setting: WardSetting | null])[]) =>
  changes.map(([fromDay, setting]) => ({ fromDay, setting }));

/** A and B are inpatient wards (B an observation unit from 20 March on), C is a procedure area. */
const isInpatient = inpatientWards(
  new Map([
    [wardIds.A, settings([0, "inpatient"])],
    [wardIds.B, settings([0, "inpatient"], [dayOf("2024-03-20"), "outpatient"])],
    [wardIds.C, settings([0, "procedure"])],
  ]),
);

/** Rules with these census times, each from a day on. */
export function rulesWith(...changes: readonly (readonly [from: string, time: string])[]): CountingRules {
  const census = changes.map(([from, time]) => ({ fromDay: dayOf(from), time: time as CensusTime }));
  return { census: censusTable(newYork, census, dayOf("2024-02-20"), dayOf("2024-04-20")), isInpatient };
}
/** Rules with one census time. */
export const at = (time: string) => rulesWith(["2024-01-01", time]);

/** Rows as text: the day of March, the ward, `+` for a catheter-day. */
export function textsOf(rows: readonly PatientDayRow[]): string[] {
  const letterOf = (id: number) => Object.entries(wardIds).find(([, wardId]) => wardId === id)?.[0];
  return rows.map(({ day, wardId, catheter }) => `${textOf(day).slice(8)} ${letterOf(wardId)}${catheter ? "+" : ""}`);
}

/** Three nights on ward A. */
export const oneWard = ["stay 1: 05/08:00-08/10:00", "ward stay 2: A 05/08:00-08/10:00"];
