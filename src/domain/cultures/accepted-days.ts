import type { Fault } from "../../../shared/problems.ts";
import { type DatedSetting, inForceOn } from "../counting/ward-setting.ts";
import type { WayRules } from "../criteria/index.ts";
import type { DayNumber } from "../days/day-number.ts";
import { type PatientTimeline, type Stay, stands } from "../timeline/timeline.ts";
import { wardStretches } from "../timeline/ward-stretches.ts";

/**
 * How far around a stay specimens and signs are recorded, in days. Before: elements of an infection that is present on
 * admission reach back 2 days (CDC, frequently asked questions on identifying infections). After: an infection may begin
 * up to the day after discharge, and its culture follows its first sign by at most 3 days (chapter 7 of the CDC Patient
 * Safety Component Manual, read in the national adaptation of Taiwan), which makes 4.
 */
const daysBefore = 2;
const daysAfter = 4;

/** Days from first to last, both included; `last` is null while the stay lasts. */
export interface AcceptedDays {
  readonly first: DayNumber;
  readonly last: DayNumber | null;
}

/**
 * The days of which specimens and signs are recorded, for each standing stay: from 2 days before the first day on an
 * inpatient ward to 4 days after discharge. A stay that by `today` has not reached an inpatient ward counts from its
 * admission, and a ward that nobody described may be one: what was sent to the laboratory must not be lost over it.
 */
export function acceptedDays({ stays }: PatientTimeline, rules: WayRules, today: DayNumber): AcceptedDays[] {
  return stays.filter(stands).map((stay) => ({
    first: firstDay(stay, rules, today) - daysBefore,
    last: stay.dischargedAt === null ? null : rules.zone.dayOf(stay.dischargedAt) + daysAfter,
  }));
}

function firstDay(stay: Stay, { zone, wards }: WayRules, today: DayNumber): DayNumber {
  for (const { wardId, start, end, kind } of wardStretches(stay)) {
    if (kind !== "ward") continue;
    const last = end === null ? today : Math.min(today, zone.dayOf(end > start ? end - 1 : end));
    const day = inpatientFrom(wards.get(wardId) ?? [], zone.dayOf(start), last);
    if (day !== null) return day;
  }
  return zone.dayOf(stay.admittedAt);
}

/** The first of these days on which the ward is, or may be, one for inpatients; null when there is none. */
function inpatientFrom(settings: readonly DatedSetting[], first: DayNumber, last: DayNumber): DayNumber | null {
  const mayBe = (day: DayNumber) => (inForceOn(settings, day)?.setting ?? "inpatient") === "inpatient";
  const changes = settings.map(({ fromDay }) => fromDay).filter((day) => day > first && day <= last);
  return [first, ...changes.sort((a, b) => a - b)].find(mayBe) ?? null;
}

/** A fault when a day is none of those. The sentence names the days around stays and no date. */
export function dayFaults(accepted: readonly AcceptedDays[], day: DayNumber, pointer: string): Fault[] {
  if (accepted.some(({ first, last }) => day >= first && (last === null || day <= last))) return [];
  const detail =
    accepted.length === 0
      ? "The patient has no stay here."
      : `It is more than ${daysBefore} days before the first inpatient day or more than ${daysAfter} days after discharge.`;
  return [{ code: "outside-surveillance-days", pointer, detail }];
}
