import type { Instant } from "../days/day-number.ts";
import { showLocalTime } from "../days/local-time.ts";
import type { Zone } from "../days/zone.ts";

/** The time of day that the clocks show, `14:30`. */
export function clockTime(zone: Zone, at: Instant): string {
  return showLocalTime(at, zone).slice(11, 16);
}

/** The local date of an instant, `2026-03-05`. */
export function dayOfTime(zone: Zone, at: Instant): string {
  return showLocalTime(at, zone).slice(0, 10);
}

/** The local date and time of day, `2026-03-05 14:30`. */
export function dayAndTime(zone: Zone, at: Instant): string {
  return `${dayOfTime(zone, at)} ${clockTime(zone, at)}`;
}
