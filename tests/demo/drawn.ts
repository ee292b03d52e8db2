import type { Course, DemoCatheter } from "../../src/demo/course.ts";
import { type DemoHospital, drawHospital } from "../../src/demo/hospital.ts";
import type { DayNumber, Instant } from "../../src/domain/days/day-number.ts";
import { dayMs } from "../../src/domain/days/day-number.ts";
import { zoneNamed } from "../../src/domain/days/zone.ts";

export const zone = zoneNamed("America/New_York");
/** Noon of an ordinary Wednesday. */
export const noon = Date.UTC(2026, 10, 25, 17);

/** The hospital up to an instant; the same year is drawn once. */
export function hospitalAt(now: Instant, { seed = 1, days = 365 } = {}): DemoHospital {
  const key = `${now} ${seed} ${days}`;
  const found = drawn.get(key) ?? drawHospital({ seed, zone, now, days });
  drawn.set(key, found);
  return found;
}
const drawn = new Map<string, DemoHospital>();

/** The course of a scene, and its catheters. */
export function scene({ courses }: DemoHospital, name: string): { course: Course; catheters: readonly DemoCatheter[] } {
  const course = courses.find(({ stay }) => stay === `SX-${name}`);
  if (!course) throw new Error(`there is no scene ${name}`);
  return { course, catheters: course.catheters };
}

/** The instant at which a local day begins. */
export function midnight(day: DayNumber): Instant {
  return zone.firstInstantFrom(day * dayMs);
}
