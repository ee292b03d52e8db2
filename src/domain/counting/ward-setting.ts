import type { WardSetting } from "../../../shared/vocabulary.ts";
import type { DayNumber } from "../days/day-number.ts";

/** What a ward is from a day on. */
export interface DatedSetting {
  readonly fromDay: DayNumber;
  readonly setting: WardSetting | null;
}

/** The one in force on a day, of a list in the order of days; undefined before the first. */
export function inForceOn<T extends { readonly fromDay: DayNumber }>(
  list: readonly T[],
  day: DayNumber,
): T | undefined {
  return list.findLast((item) => item.fromDay <= day);
}

/**
 * The first day of which anybody said what a ward is. A ward that files only named was there without a setting; days
 * before the first one are told as days before anything was said, whether or not its name was known. Undefined when
 * nobody ever said it.
 */
export function describedFrom(settings: readonly DatedSetting[]): DayNumber | undefined {
  return settings.find(({ setting }) => setting !== null)?.fromDay;
}

/** Whether the setting of a ward was known on a facility day. */
export function describedWards(
  wards: ReadonlyMap<number, readonly DatedSetting[]>,
): (wardId: number, day: DayNumber) => boolean {
  return (wardId, day) => (inForceOn(wards.get(wardId) ?? [], day)?.setting ?? null) !== null;
}

/**
 * Whether a ward earned patient-days on a facility day. A ward whose setting nobody gave earns none: it is listed as
 * missing instead.
 * Source: counts are of inpatient locations: CDC Patient Safety Component Manual, chapter 2 (from memory).
 */
export function inpatientWards(
  wards: ReadonlyMap<number, readonly DatedSetting[]>,
): (wardId: number, day: DayNumber) => boolean {
  return (wardId, day) => inForceOn(wards.get(wardId) ?? [], day)?.setting === "inpatient";
}
