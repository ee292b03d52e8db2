import { type DayNumber, dayMs, type Instant } from "../domain/days/day-number.ts";
import type { Zone } from "../domain/days/zone.ts";
import { type Course, catheterFrom, type DemoCatheter, type DemoReview } from "./course.ts";
import { culturedCourses } from "./culture-scenes.ts";
import { scenesOfNow } from "./scenes-of-now.ts";
import { wardOf } from "./wards.ts";

const minuteMs = 60_000;
const hourMs = 60 * minuteMs;

/** When the scenes play. */
export interface SceneTimes {
  readonly zone: Zone;
  readonly now: Instant;
  /** How many days back the demo reaches. */
  readonly days: number;
}

/**
 * Patients who are there for certain, whatever is drawn: what a record of a year holds sooner or later and what counts
 * or reminds differently. Each is found by the name of its stay.
 */
export function scenes(times: SceneTimes): Course[] {
  const { zone, now } = times;
  const at = (daysAgo: number, hour: number) =>
    zone.firstInstantFrom((zone.dayOf(now) - daysAgo) * dayMs + Math.round(hour * hourMs));
  return [
    lateEntry(at),
    transferAtCensus(at),
    unknownAbsence(at),
    reinsertion(at),
    exchange(at),
    ...clockChanges(times),
    ...scenesOfNow(times, at),
    ...culturedCourses(times),
  ];
}

/** The instant of a local hour some days ago. */
export type TimeAgo = (daysAgo: number, hour: number) => Instant;

/** A stay on one ward. */
export function stayOn(
  name: string,
  { ward, bed, from, to }: { ward: string; bed: string; from: Instant; to: Instant },
  catheters: readonly DemoCatheter[],
): Course {
  const leg = { ward: wardOf(ward), bed, from, to, absence: null };
  return { stay: `SX-${name}`, patient: `ABX-${name}`, legs: [leg], catheters };
}

/** A review that is written down at once, or later. */
export function keptAt(at: Instant, indication: string, written = at + 5 * minuteMs): DemoReview {
  return { at, outcome: "keep", indication, note: null, written };
}

/** Written down after midnight what happened in the afternoon. Somebody corrects its reason later. */
function lateEntry(at: TimeAgo): Course {
  const catheter = catheterFrom(at(6, 11), {
    ...{ number: "CX-late-entry", gone: at(2, 9), removed: at(2, 9), reason: "no-longer-needed" },
    ...{ indication: "wound-healing" },
    reviews: [
      keptAt(at(5, 9), "wound-healing"),
      keptAt(at(4, 16.5), "other", at(3, 0.75)),
      keptAt(at(3, 9.5), "wound-healing"),
    ],
  });
  return stayOn("late-entry", { ward: "3E", bed: "21", from: at(6, 8), to: at(1, 14) }, [catheter]);
}

/** Moved at the very instant of the census. */
function transferAtCensus(at: TimeAgo): Course {
  const legs = [
    { ward: wardOf("3E"), bed: "22", from: at(10, 10), to: at(8, 0), absence: null },
    { ward: wardOf("4S"), bed: "3", from: at(8, 0), to: at(5, 11), absence: null },
  ];
  const catheter = catheterFrom(at(10, 12), {
    ...{ number: "CX-transfer-at-census", gone: at(6, 10), removed: at(6, 10), reason: "no-longer-needed" },
    reviews: [keptAt(at(9, 9), "retention-or-obstruction"), keptAt(at(7, 9), "retention-or-obstruction")],
  });
  return { stay: "SX-transfer-at-census", patient: "ABX-transfer-at-census", legs, catheters: [catheter] };
}

/** Off the wards over a census, and nobody said why. */
function unknownAbsence(at: TimeAgo): Course {
  const ward = wardOf("3W");
  const legs = [
    { ward, bed: "5", from: at(14, 9), to: at(12, 20), absence: null },
    { ward, bed: "5", from: at(11, 8), to: at(9, 12), absence: null },
  ];
  return { stay: "SX-unknown-absence", patient: "ABX-unknown-absence", legs, catheters: [] };
}

/** Out, and in again twelve hours later: no full day without one, so the days go on. */
function reinsertion(at: TimeAgo): Course {
  const first = catheterFrom(at(9, 10), {
    ...{ number: "CX-reinsertion-1", gone: at(7, 8), removed: at(7, 8), reason: "no-longer-needed" },
    reviews: [keptAt(at(8, 9), "retention-or-obstruction")],
  });
  const second = catheterFrom(at(7, 20), {
    ...{ number: "CX-reinsertion-2", gone: at(4, 9), removed: at(4, 9), reason: "no-longer-needed" },
    reviews: [keptAt(at(6, 9), "retention-or-obstruction"), keptAt(at(5, 10), "retention-or-obstruction")],
  });
  return stayOn("reinsertion", { ward: "3E", bed: "23", from: at(9, 8), to: at(3, 11) }, [first, second]);
}

/** A blocked catheter exchanged for another within the hour. */
function exchange(at: TimeAgo): Course {
  const first = catheterFrom(at(7, 9), {
    ...{ number: "CX-exchange-1", gone: at(5, 10), removed: at(5, 10), reason: "exchange" },
    reviews: [keptAt(at(6, 9), "wound-healing")],
  });
  const second = catheterFrom(at(5, 10.5), {
    ...{ number: "CX-exchange-2", gone: at(3, 9), removed: at(3, 9), reason: "no-longer-needed" },
    reviews: [keptAt(at(4, 9), "wound-healing")],
  });
  return stayOn("exchange", { ward: "4S", bed: "7", from: at(7, 8), to: at(2, 12) }, [first, second]);
}

/** Stays with a catheter across each change of the clocks. */
function clockChanges({ zone, now, days }: SceneTimes): Course[] {
  const today = zone.dayOf(now);
  const changed: DayNumber[] = [];
  for (let day = today - days + 3; day < today - 3; day++)
    if (midnight(zone, day + 1) - midnight(zone, day) !== dayMs) changed.push(day);
  return changed.map((day, i) => {
    const [from, to] = [midnight(zone, day - 1) + 10 * hourMs, midnight(zone, day + 2) + 12 * hourMs];
    const catheter = catheterFrom(from + hourMs, {
      number: `CX-clock-change-${i + 1}`,
      gone: to - hourMs,
      removed: to - hourMs,
    });
    return stayOn(`clock-change-${i + 1}`, { ward: "3E", bed: "24", from, to }, [catheter]);
  });
}

function midnight(zone: Zone, day: DayNumber): Instant {
  return zone.firstInstantFrom(day * dayMs);
}
