import { countsAsIndwelling } from "../domain/counting/counts-as-catheter-day.ts";
import { type DayNumber, dayMs, type Instant } from "../domain/days/day-number.ts";
import { monthDays, monthOf } from "../domain/days/month.ts";
import type { Zone } from "../domain/days/zone.ts";
import type { Course } from "./course.ts";
import { type Draw, drawFrom } from "./draw.ts";
import { withBirthDays } from "./draw-birth-days.ts";
import { drawCatheters } from "./draw-catheters.ts";
import { drawReviews } from "./draw-reviews.ts";
import { drawPath, type Leg } from "./patient-path.ts";
import { type DemoPolicy, demoPolicies } from "./policies.ts";
import { scenes } from "./scenes.ts";
import { demoWards } from "./wards.ts";

export interface DemoOptions {
  readonly seed: number;
  readonly zone: Zone;
  /** The demo reaches up to this instant. */
  readonly now: Instant;
  /** How many days back it reaches. */
  readonly days: number;
}

/** What somebody counted on a ward. */
export interface HandCount {
  readonly ward: string;
  readonly day: DayNumber;
  readonly patients: number;
  readonly catheters: number;
}

/** The fictional hospital up to an instant. */
export interface DemoHospital {
  readonly courses: readonly Course[];
  readonly policies: readonly DemoPolicy[];
  readonly counts: readonly HandCount[];
}

/** Draws the hospital. The same seed and instant give the same; nobody in it exists, and nothing lies after `now`. */
export function drawHospital(options: DemoOptions): DemoHospital {
  const { zone, now, days } = options;
  // A few weeks more are drawn than are kept, so that the first day finds the wards full.
  const settling = 40;
  const last = zone.dayOf(now);
  const policies = demoPolicies(options);
  const draw = drawFrom(options.seed);
  const courses: Course[] = [...scenes(options)];
  for (let day = last - days - settling; day <= last; day++)
    for (const course of arrivalsOn(draw, day, { ...options, policies }))
      if ((course.legs.at(-1)?.to ?? 0) >= now - days * dayMs) courses.push(course);
  const begun = courses.map((course) => withoutFuture(course, now)).filter(({ legs }) => legs.length > 0);
  const counts = handCounts(draw, begun, options);
  return { courses: withBirthDays(drawFrom(options.seed + 3), begun, last), policies, counts };
}

function arrivalsOn(draw: Draw, day: DayNumber, given: DemoOptions & { policies: readonly DemoPolicy[] }): Course[] {
  const { zone, now } = given;
  return demoWards.flatMap((ward) =>
    Array.from({ length: draw.count(ward.arrivalsADay) }, (_, i) => {
      const arrival = zone.firstInstantFrom(day * dayMs + draw.whole(6 * 60, 22 * 60) * 60_000);
      const stay = `S${day}-${ward.code}-${i + 1}`;
      const legs = drawPath(draw, ward, arrival);
      const catheters = drawCatheters(draw, { stay, legs, now }).map((catheter) => ({
        ...catheter,
        reviews: drawReviews(draw, catheter, { ...given, legs }),
      }));
      return { stay, patient: `AB${day}${ward.code}${i + 1}`, legs, catheters };
    }),
  );
}

function withoutFuture(course: Course, now: Instant): Course {
  return {
    ...course,
    legs: course.legs.filter((leg) => leg.from <= now),
    catheters: course.catheters.filter(({ start }) => start <= now),
  };
}

/** Ward 3E counted by hand at each midnight of last month: now and then a patient was missed. */
function handCounts(draw: Draw, courses: readonly Course[], { zone, now, days }: DemoOptions): HandCount[] {
  const ward = "3E";
  const lastMonth = monthDays(monthOf(monthDays(monthOf(zone.dayOf(now))).first - 1));
  const counts: HandCount[] = [];
  for (let day = Math.max(lastMonth.first, zone.dayOf(now) - days + 1); day <= lastMonth.last; day++) {
    const census = zone.firstInstantFrom(day * dayMs);
    const there = courses.filter(({ legs }) => isOn(legs, ward, census));
    const withCatheter = there.filter(({ catheters }) =>
      catheters.some(({ kind, start, gone }) => countsAsIndwelling(kind) && start <= census && census < gone),
    );
    const missed = draw.chance(0.1) ? 1 : 0;
    counts.push({ ward, day, patients: there.length, catheters: Math.max(0, withCatheter.length - missed) });
  }
  return counts;
}

/** On a ward at an instant, or away from it for a procedure. */
function isOn(legs: readonly Leg[], code: string, at: Instant): boolean {
  return legs.some(({ ward, from, to, absence }, i) => {
    const end = absence === "procedure" ? (legs[i + 1]?.from ?? to) : to;
    return ward.code === code && from <= at && at < end;
  });
}
