import { type CensusTable, censusesWithin } from "../days/census.ts";
import type { DayNumber, Instant } from "../days/day-number.ts";
import { type Stretch, uniteStretches } from "../days/stretch.ts";
import type { CountedStay, CountedTimeline } from "../timeline/counted-timeline.ts";
import { stands } from "../timeline/timeline.ts";
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

/** Takes patient-days one at a time: what sums them up needs no row of each. */
export type PatientDayVisitor = (day: DayNumber, wardId: number, stayId: number, catheter: boolean) => void;

/**
 * The patient-days of closed stretches: what the ledger stores. At most one row a day, whatever number of stays or
 * catheters, in the order of days.
 * Source: count at the same time each day, catheters present at the count, one catheter-day a patient and day: CDC
 * Patient Safety Component Manual, chapter 7 (from memory); the point count is described in Donnelly et al., Pediatr
 * Qual Saf 2021;6:e466.
 */
export function closedPatientDays(timeline: CountedTimeline, rules: CountingRules): PatientDayRow[] {
  return inOrder((visit) => visitClosedPatientDays(timeline, rules, visit));
}

/** Hands over what {@link closedPatientDays} returns, stay by stay instead of in the order of days. */
export function visitClosedPatientDays(
  timeline: CountedTimeline,
  rules: CountingRules,
  visit: PatientDayVisitor,
): void {
  visitPatientDays(timeline, { rules, now: null, visit });
}

/**
 * The patient-days of stretches that still last, up to `now` (a census at that very instant included): what a report
 * adds to the ledger.
 */
export function openPatientDays(timeline: CountedTimeline, rules: CountingRules, now: Instant): PatientDayRow[] {
  return inOrder((visit) => visitOpenPatientDays(timeline, rules, now, visit));
}

/** Hands over what {@link openPatientDays} returns, stay by stay instead of in the order of days. */
export function visitOpenPatientDays(
  timeline: CountedTimeline,
  rules: CountingRules,
  now: Instant,
  visit: PatientDayVisitor,
): void {
  visitPatientDays(timeline, { rules, now, visit });
}

function inOrder(days: (visit: PatientDayVisitor) => void): PatientDayRow[] {
  const rows: PatientDayRow[] = [];
  days((day, wardId, stayId, catheter) => rows.push({ day, wardId, stayId, catheter }));
  return rows.sort((a, b) => a.day - b.day);
}

interface Count {
  readonly rules: CountingRules;
  /** null: stretches that have ended; else those that still last, up to then. */
  readonly now: Instant | null;
  readonly visit: PatientDayVisitor;
}

function visitPatientDays(timeline: CountedTimeline, count: Count): void {
  const counted = new CountedDays();
  for (const stay of timeline.stays) {
    if (stands(stay)) visitStay(stay, counted, count);
  }
}

function visitStay(stay: CountedStay, counted: CountedDays, { rules, now, visit }: Count): void {
  const catheters = unitedCatheters(stay);
  const { days, instants } = rules.census;
  for (const stretch of wardStretches(stay)) {
    const open = stretch.end === null;
    if (open !== (now !== null) || !countsForTheWard(stretch)) continue;
    // The clock of a device may run ahead: a stretch that has only just begun there has had no census yet.
    if (now !== null && stretch.start > now) continue;
    const range = censusesWithin(rules.census, stretch.start, stretch.end ?? (now ?? 0) + 1);
    let next = 0;
    for (let i = range.from; i < range.to; i++) {
      const day = days[i] as DayNumber;
      const instant = instants[i] as Instant;
      if (!rules.isInpatient(stretch.wardId, day) || !counted.add(day)) continue;
      while (next < catheters.length && (catheters[next] as Stretch).end <= instant) next++;
      const catheter = next < catheters.length && (catheters[next] as Stretch).start <= instant;
      visit(day, stretch.wardId, stay.id, catheter);
    }
  }
}

/** The days that a patient was counted on. They nearly always come in order, and then asking takes one comparison. */
class CountedDays {
  readonly #days: DayNumber[] = [];
  #last = Number.NEGATIVE_INFINITY;

  /** False when the day was counted before. */
  add(day: DayNumber): boolean {
    if (day > this.#last) this.#last = day;
    else if (this.#days.includes(day)) return false;
    this.#days.push(day);
    return true;
  }
}

const none: readonly Stretch[] = [];

/** When at least one indwelling urethral catheter was in place during a stay. */
function unitedCatheters(stay: CountedStay): readonly Stretch[] {
  if (stay.catheters.length === 0) return none;
  const stretches = standingCatheters(stay).flatMap((catheter) => {
    if (!countsAsIndwelling(catheter.kind)) return [];
    const stretch = catheterStretch(stay, catheter);
    return stretch ? [{ start: stretch.start, end: stretch.end ?? Number.POSITIVE_INFINITY }] : [];
  });
  return uniteStretches(stretches);
}
