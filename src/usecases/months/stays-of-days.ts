import { type DayNumber, dayMs, type Instant } from "../../domain/days/day-number.ts";
import type { Read } from "../../store/store.ts";
import { type OwnedStay, staysBetween } from "../../store/timelines.ts";
import type { DayRange } from "../../store/ward-days.ts";
import type { FacilityRules } from "./counting-rules.ts";

/** From the first instant of some facility days to the first one after them. */
export function periodOf({ zone }: Pick<FacilityRules, "zone">, days: DayRange): { start: Instant; end: Instant } {
  const from = (day: DayNumber) => zone.firstInstantFrom(day * dayMs);
  return { start: from(days.first), end: from(days.last + 1) };
}

/**
 * The stays that touch some facility days, with those that began as the days end: a census at 24:00 counts who came at
 * that very instant. Only those that were on one of `wardIds` when given.
 */
export function staysOfDays(
  read: Read,
  rules: Pick<FacilityRules, "zone" | "facility">,
  { days, wardIds }: { days: DayRange; wardIds?: readonly number[] | undefined },
): Promise<OwnedStay[]> {
  const { start, end } = periodOf(rules, days);
  return staysBetween(read, rules.facility.id, { start, end: end + 1, wardIds });
}

/** Of these stays those that have not ended: their days are counted at read. */
export function lastingOf(stays: readonly OwnedStay[]): OwnedStay[] {
  return stays.filter(({ stay }) => stay.dischargedAt === null);
}
