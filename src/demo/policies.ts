import type { PolicyBody } from "../../shared/policy.ts";
import { type DayNumber, dayMs, type Instant } from "../domain/days/day-number.ts";
import type { Zone } from "../domain/days/zone.ts";
import { defaultPolicy } from "../domain/policy/default-policy.ts";

/** A policy that a ward of Alder Bay set itself. */
export interface DemoPolicy {
  readonly ward: string;
  readonly fromDay: DayNumber;
  readonly body: PolicyBody;
  readonly reason: string;
}

const minuteMs = 60_000;
const earlyHours = ["10:00", "06:00", "03:00", "01:00", "00:00"];
const lateHours = ["12:00", "18:00", "22:00", "23:59"];

/**
 * Two wards have policies of their own: intensive care reviews early and has a threshold, 3W reviews late. Which hours
 * these are depends on `now`, so that on every load the one ward's hour has passed and the other's has not.
 */
export function demoPolicies({ zone, now }: { zone: Zone; now: Instant }): DemoPolicy[] {
  const today = zone.dayOf(now);
  const early = earlyHours.find((hour) => hourOn(zone, today, hour) <= now - 30 * minuteMs) ?? "00:00";
  const late = lateHours.find((hour) => hourOn(zone, today, hour) >= now + 30 * minuteMs) ?? "23:59";
  return [
    {
      ...{ ward: "ICU", fromDay: today - 150, reason: "Reviews belong to the unit's own round" },
      body: { ...defaultPolicy, reviewDueAt: early, thresholdDays: 5, confirmationHours: 36 },
    },
    {
      ...{ ward: "3W", fromDay: today - 60, reason: "Surgeons see their patients later in the day" },
      body: { ...defaultPolicy, reviewDueAt: late },
    },
  ];
}

/** The instant by which a ward's reviews of a day are due. */
export function dueOn(
  policies: readonly DemoPolicy[],
  { ward, day, zone }: { ward: string; day: DayNumber; zone: Zone },
): Instant {
  const own = policies.find((policy) => policy.ward === ward && policy.fromDay <= day);
  return hourOn(zone, day, (own?.body ?? defaultPolicy).reviewDueAt);
}

function hourOn(zone: Zone, day: DayNumber, hour: string): Instant {
  const [hours, minutes] = hour.split(":").map(Number);
  return zone.firstInstantFrom(day * dayMs + ((hours ?? 0) * 60 + (minutes ?? 0)) * minuteMs);
}
