import type { InsertionRecord } from "../../../shared/records.ts";
import { countsAsIndwelling } from "../counting/counts-as-catheter-day.ts";
import { dwellsOf, type WardDwell } from "../counting/dwells.ts";
import type { DayNumber, Instant } from "../days/day-number.ts";
import { countsForTheWard, holds } from "../timeline/ward-stretches.ts";
import { type CatheterPresence, catheterPresences, placeAt } from "./catheter-presence.ts";
import type { NecessityPatient, NecessityRules } from "./facts.ts";

/** A catheter that was inserted in a period, and the ward to which its insertion belongs. */
export interface InsertedCatheter {
  readonly wardId: number;
  readonly catheterId: number;
  readonly day: DayNumber;
  readonly insertedIn: InsertionRecord["insertedIn"];
  readonly insertedBy: InsertionRecord["insertedBy"];
}

/** What became of the indwelling urethral catheters of a period. */
export interface MonthCatheters {
  readonly inserted: readonly InsertedCatheter[];
  readonly dwells: readonly WardDwell[];
  /** The ward of each catheter that is in place at `now`. */
  readonly open: readonly number[];
}

/** The days that are looked at, and the instant at which they end. */
interface Period {
  readonly first: DayNumber;
  readonly last: DayNumber;
  readonly end: Instant;
}

/**
 * Catheters inserted in a period, how long they stayed within it, and those in place now. An insertion belongs to the
 * inpatient ward that had the patient then, or the first one after: one made in theater belongs to the ward that takes
 * care of it. A catheter in place on arrival was not inserted here, and its time in place is not known.
 * Times in place are watched to the end of the period, so that the figure of a month that is over does not change by
 * waiting. Common practice.
 */
export function monthCatheters(
  patients: readonly NecessityPatient[],
  period: Period,
  { rules, now }: { rules: NecessityRules; now: Instant },
): MonthCatheters {
  const found = patients.map((patient) => {
    const all = catheterPresences(patient, rules, now).filter(({ catheter }) => countsAsIndwelling(catheter.kind));
    return {
      inserted: all.flatMap((presence) => insertionIn(presence, period, rules)),
      dwells: dwellsBegun(patient, period, { rules, now }),
      open: all.filter((one) => holds(one, now)).flatMap(({ places }) => placeAt(places, now)?.wardId ?? []),
    };
  });
  return {
    inserted: found.flatMap(({ inserted }) => inserted).sort((a, b) => a.day - b.day || a.catheterId - b.catheterId),
    dwells: found.flatMap(({ dwells }) => dwells),
    open: found.flatMap(({ open }) => open),
  };
}

function insertionIn(presence: CatheterPresence, { first, last }: Period, rules: NecessityRules): InsertedCatheter[] {
  const { catheter, stay } = presence;
  if (catheter.insertedAt === null || catheter.insertedAt < stay.admittedAt) return [];
  const day = rules.zone.dayOf(catheter.insertedAt);
  const wardId = wardOfInsertion(presence, rules);
  if (day < first || day > last || wardId === null) return [];
  const { insertedIn, insertedBy } = catheter.insertionRecord ?? {};
  return [{ wardId, catheterId: catheter.id, day, insertedIn, insertedBy }];
}

/** The inpatient ward that had the patient at the beginning, or the first one that had them with the catheter. */
function wardOfInsertion({ places, start, end }: CatheterPresence, rules: NecessityRules): number | null {
  const place = places.find(
    (one) =>
      countsForTheWard(one) &&
      (one.end === null || one.end > start) &&
      (end === null || one.start <= end) &&
      rules.isInpatient(one.wardId, rules.zone.dayOf(Math.max(one.start, start))),
  );
  return place?.wardId ?? null;
}

/** The times in place that began with an insertion in the period; its end belongs to the day after it. */
function dwellsBegun(
  { stays }: NecessityPatient,
  { first, last, end }: Period,
  { rules, now }: { rules: NecessityRules; now: Instant },
): WardDwell[] {
  return stays
    .flatMap((stay) => dwellsOf(stay, rules, Math.min(now, end - 1)))
    .filter(({ insertedOn }) => insertedOn !== null && insertedOn >= first && insertedOn <= last);
}
