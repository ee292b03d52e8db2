import { countsAsIndwelling } from "../counting/counts-as-catheter-day.ts";
import type { DayNumber, Instant } from "../days/day-number.ts";
import { careCheckResult } from "./care-check-result.ts";
import { catheterDay } from "./catheter-day.ts";
import { type CatheterPresence, catheterPresences, placeAt } from "./catheter-presence.ts";
import type { NecessityPatient, NecessityRules } from "./facts.ts";
import { type ReviewState, reviewOfDay } from "./review-of-day.ts";

/** What the figures of one ward over a period are made of. */
export interface MonthNecessityFacts {
  readonly wardId: number;
  readonly first: DayNumber;
  readonly last: DayNumber;
  readonly now: Instant;
  /** At least every patient who was on the ward in the period, each once. */
  readonly patients: readonly NecessityPatient[];
  /** The ward's catheter-days of the period: those of the ledger and those of stays that still last. */
  readonly catheterDays: readonly { readonly patientId: number; readonly day: DayNumber }[];
  /** The instant of a day's census. */
  readonly censusAt: (day: DayNumber) => Instant;
  readonly rules: NecessityRules;
}

/** A row behind a figure. */
export interface CatheterOnDay {
  readonly catheterId: number;
  readonly day: DayNumber;
}

type Rows = readonly CatheterOnDay[];

/**
 * Each figure is the number of its rows, which are in the order of days and catheters. Reviews belong to the ward that
 * owed them; days are some of the ward's catheter-days; care checks belong to the ward on which they were made, and one
 * catheter can have several a day.
 */
export interface MonthNecessity {
  /** Owed by an hour that has passed: the four that follow together. */
  readonly reviewsDue: Rows;
  readonly reviewsInTime: Rows;
  readonly reviewsLate: Rows;
  readonly reviewsMissed: Rows;
  /** Not made, and their day is not over. */
  readonly reviewsOverdue: Rows;
  readonly daysPastThreshold: Rows;
  readonly daysWithoutIndication: Rows;
  readonly daysOutsidePolicy: Rows;
  readonly daysDoubtful: Rows;
  /** All that were made: the three that follow together. */
  readonly careChecks: Rows;
  readonly careChecksKept: Rows;
  readonly careChecksBroken: Rows;
  readonly careChecksIncomplete: Rows;
}

type Figures = { -readonly [Name in keyof MonthNecessity]: CatheterOnDay[] };

/**
 * Reviews, days and care checks of indwelling urethral catheters on one ward over a period, as known at `now`, each
 * figure with its rows. Throws a plain Error when a catheter-day does not fit the patients.
 */
export function monthNecessity(facts: MonthNecessityFacts): MonthNecessity {
  const figures = noFigures();
  const daysOf = daysByPatient(facts.catheterDays);
  for (const patient of facts.patients) {
    const all = catheterPresences(patient, facts.rules, facts.now);
    const presences = all.filter(({ catheter }) => countsAsIndwelling(catheter.kind));
    for (const presence of presences) {
      addReviews(figures, presence, facts);
      addCareChecks(figures, presence, facts);
    }
    for (const day of daysOf.get(patient.patientId) ?? []) addDay(figures, presences, day, facts);
    daysOf.delete(patient.patientId);
  }
  for (const patientId of daysOf.keys()) throw new Error(`patient ${patientId} has catheter-days and is not given`);
  for (const rows of Object.values(figures)) rows.sort((a, b) => a.day - b.day || a.catheterId - b.catheterId);
  return figures;
}

function addReviews(
  figures: Figures,
  presence: CatheterPresence,
  { wardId, now, rules, ...facts }: MonthNecessityFacts,
) {
  if (!presence.places.some((place) => place.wardId === wardId)) return;
  const last = Math.min(facts.last, presence.days.last);
  for (let day = Math.max(facts.first, presence.days.first); day <= last; day++) {
    const { owed, state } = reviewOfDay(presence, day, rules, now);
    if (owed?.wardId !== wardId || now <= owed.dueAt) continue;
    const row = { catheterId: presence.catheter.id, day };
    figures.reviewsDue.push(row);
    figures[reviewFigure(state)].push(row);
  }
}

/** The figure of a review whose hour has passed. */
function reviewFigure(state: ReviewState): keyof Figures {
  if (state === "done") return "reviewsInTime";
  if (state === "late") return "reviewsLate";
  return state === "missed" ? "reviewsMissed" : "reviewsOverdue";
}

function addDay(figures: Figures, presences: readonly CatheterPresence[], day: DayNumber, facts: MonthNecessityFacts) {
  const { wardId, now, rules } = facts;
  const census = facts.censusAt(day);
  // The ledger keeps days that lie ahead after the clock was set back; nothing is known of them yet.
  if (census > now) return;
  const found = catheterDay(presences, { wardId, day, census, now }, rules);
  const row = { catheterId: found.catheterId, day };
  if (found.pastThreshold) figures.daysPastThreshold.push(row);
  if (found.indication === "missing") figures.daysWithoutIndication.push(row);
  if (found.indication === "outside") figures.daysOutsidePolicy.push(row);
  if (found.doubtful) figures.daysDoubtful.push(row);
}

const checkFigures = {
  kept: "careChecksKept",
  broken: "careChecksBroken",
  incomplete: "careChecksIncomplete",
} as const;

function addCareChecks(figures: Figures, { notes, places, catheter }: CatheterPresence, facts: MonthNecessityFacts) {
  const { wardId, first, last, now, rules } = facts;
  for (const { kind, at, items } of notes) {
    if (kind !== "care-check" || at > now) continue;
    const day = rules.zone.dayOf(at);
    // A check made in the minute of leaving still belongs to the ward that was left.
    const place = placeAt(places, at) ?? placeAt(places, at - 1);
    if (day < first || day > last || place?.wardId !== wardId) continue;
    const row = { catheterId: catheter.id, day };
    figures.careChecks.push(row);
    figures[checkFigures[careCheckResult(items, rules.policyOn(wardId, day).body)]].push(row);
  }
}

function daysByPatient(list: MonthNecessityFacts["catheterDays"]): Map<number, DayNumber[]> {
  const days = new Map<number, DayNumber[]>();
  for (const { patientId, day } of list) {
    const known = days.get(patientId);
    if (known) known.push(day);
    else days.set(patientId, [day]);
  }
  return days;
}

function noFigures(): Figures {
  return {
    reviewsDue: [],
    reviewsInTime: [],
    reviewsLate: [],
    reviewsMissed: [],
    reviewsOverdue: [],
    daysPastThreshold: [],
    daysWithoutIndication: [],
    daysOutsidePolicy: [],
    daysDoubtful: [],
    careChecks: [],
    careChecksKept: [],
    careChecksBroken: [],
    careChecksIncomplete: [],
  };
}
