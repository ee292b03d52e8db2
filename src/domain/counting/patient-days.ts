import { type CensusTable, censusesWithin } from "../days/census.ts";
import type { DayNumber, Instant } from "../days/day-number.ts";
import { type Stretch, uniteStretches } from "../days/stretch.ts";
import { type PatientTimeline, type Stay, stands } from "../timeline/timeline.ts";
import { catheterStretch, countsForTheWard, standingCatheters, wardStretches } from "../timeline/ward-stretches.ts";
import { countsAsIndwelling } from "./counts-as-catheter-day.ts";

/** One row of the ledger: at the census of that day the patient was on that ward, with or without a catheter. */
export interface PatientDayRow {
  readonly day: DayNumber;
  readonly wardId: number;
  readonly stayId: number;
  readonly catheter: boolean;
}

export interface CountingRules {
  readonly census: CensusTable;
  /** Whether the ward was an inpatient ward on that facility day. */
  readonly isInpatient: (wardId: number, day: DayNumber) => boolean;
}

/**
 * The patient-days of closed stretches: what the ledger stores. At most one row a day, whatever number of stays or
 * catheters, in the order of days.
 * Source: count at the same time each day, catheters present at the count, one catheter-day a patient and day: CDC
 * Patient Safety Component Manual, chapter 7 (from memory); the point count is described in Donnelly et al., Pediatr
 * Qual Saf 2021;6:e466.
 */
export function closedPatientDays(timeline: PatientTimeline, rules: CountingRules): PatientDayRow[] {
  return patientDays(timeline, rules, null);
}

/**
 * The patient-days of stretches that still last, up to `now` (a census at that very instant included): what a report
 * adds to the ledger.
 */
export function openPatientDays(timeline: PatientTimeline, rules: CountingRules, now: Instant): PatientDayRow[] {
  return patientDays(timeline, rules, now);
}

function patientDays(timeline: PatientTimeline, rules: CountingRules, now: Instant | null): PatientDayRow[] {
  const rows = new Map<DayNumber, PatientDayRow>();
  for (const stay of timeline.stays) {
    if (stands(stay)) countStay(rows, { stay, rules, now });
  }
  return [...rows.values()].sort((a, b) => a.day - b.day);
}

function countStay(
  rows: Map<DayNumber, PatientDayRow>,
  { stay, rules, now }: { stay: Stay; rules: CountingRules; now: Instant | null },
): void {
  const catheters = unitedCatheters(stay);
  for (const stretch of wardStretches(stay)) {
    const open = stretch.end === null;
    if (open !== (now !== null) || !countsForTheWard(stretch)) continue;
    const range = censusesWithin(rules.census, stretch.start, stretch.end ?? (now ?? 0) + 1);
    let next = 0;
    for (let i = range.from; i < range.to; i++) {
      const day = rules.census.days[i] as DayNumber;
      const instant = rules.census.instants[i] as Instant;
      if (!rules.isInpatient(stretch.wardId, day) || rows.has(day)) continue;
      while (next < catheters.length && (catheters[next] as Stretch).end <= instant) next++;
      const catheter = next < catheters.length && (catheters[next] as Stretch).start <= instant;
      rows.set(day, { day, wardId: stretch.wardId, stayId: stay.id, catheter });
    }
  }
}

/** When at least one indwelling urethral catheter was in place during a stay. */
function unitedCatheters(stay: Stay): Stretch[] {
  const stretches = standingCatheters(stay).flatMap((catheter) => {
    if (!countsAsIndwelling(catheter.kind)) return [];
    const stretch = catheterStretch(stay, catheter);
    return stretch ? [{ start: stretch.start, end: stretch.end ?? Number.POSITIVE_INFINITY }] : [];
  });
  return uniteStretches(stretches);
}
