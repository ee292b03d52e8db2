import type { DayNumber } from "../days/day-number.ts";
import type { Rule, Source } from "./rule.ts";
import type {
  AttributionRule,
  CriterionRule,
  CultureRule,
  DateRule,
  DeviceRule,
  OnsetRule,
  PeriodRule,
  WindowRule,
} from "./rule-kinds.ts";

/**
 * The readings of what a published text leaves open, and its numbers. A determination reads them and nothing else, so
 * that another reading is another edition and no other code.
 */
export interface EditionOptions {
  /** Days before and after the anchor that its window reaches. */
  readonly windowDays: number;
  /** Length of the repeat infection timeframe; its day 1 is the date of event. */
  readonly repeatDays: number;
  readonly catheterDaysFrom: "first-inpatient-day" | "insertion";
  readonly absence: "restarts" | "goes-on";
  readonly yeastCountsAsSpecies: boolean;
  readonly sameSpeciesTwice: "one-organism" | "two-organisms";
  readonly abutiCommensals: boolean;
  readonly costovertebralInInfants: boolean;
  readonly urgencyOnRemovalDay: "after-removal" | "never";
  readonly timeframeAcrossStays: boolean;
  readonly elementInsideTimeframe: "no-new-event" | "later-elements";
  readonly bloodstreamPeriodFrom: "usable-window" | "window";
  readonly readmission: "one-stay" | "own-stay";
  readonly infantAge: "completed-years" | "first-birthday";
  readonly earlyFeverOver65: "not-usable" | "dates-the-event";
  readonly lookedFor: "any-day" | "every-day";
  readonly undocumented: "no-element" | "not-known";
  readonly afterDeath: "not-used" | "used";
}

/** A point that the published text leaves open, with the reading that the edition chose. */
export interface OpenPoint {
  readonly option: keyof EditionOptions;
  readonly point: string;
  readonly reading: string;
  readonly why: string;
  readonly confidence: "high" | "medium" | "low";
  readonly otherReading: string;
  /** What the option is in the other reading; of a number the values that stand for all others. */
  readonly otherValues: readonly EditionOptions[keyof EditionOptions][];
}

/** A changed reading of an option. */
export interface ReadingChange {
  readonly option: keyof EditionOptions;
  readonly value: EditionOptions[keyof EditionOptions];
}

/** A published edition of the definitions, as data: its rules in the order in which they are tried, and its readings. */
export interface Edition {
  readonly id: string;
  readonly title: string;
  readonly source: Source;
  /** Days of event for which it is in force; null: no end is known. */
  readonly inForce: { readonly from: DayNumber; readonly to: DayNumber | null };
  /** What starts a determination: a urine culture, and in some editions also a finding in urine. */
  readonly anchors: readonly ("specimen" | "finding")[];
  /** Another recognized cause takes away every sign, fever and urgency too; else only those of which the text says so. */
  readonly otherCauseForAll: boolean;
  /** Urgency, frequency and dysuria count only while no catheter is in place. */
  readonly urgencyNeedsNoCatheter: boolean;
  /** From this age on, in completed years, fever counts only with an eligible catheter; null: it counts at any age. */
  readonly feverNeedsCatheterFrom: number | null;
  readonly window: WindowRule;
  readonly culture: CultureRule;
  readonly date: DateRule;
  readonly criteria: readonly CriterionRule[];
  readonly onset: OnsetRule;
  readonly device: DeviceRule;
  readonly repeat: PeriodRule;
  /** null: the edition has no such period. */
  readonly bloodstream: PeriodRule | null;
  readonly attribution: AttributionRule;
  /** Rules that speak in derivations only where they apply. */
  readonly others: readonly Rule[];
  readonly options: EditionOptions;
  /** The readings with which it was published here, whatever is read otherwise since. */
  readonly defaults: EditionOptions;
  /** Readings that changed since: events of the months that a facility had signed by then keep the one before. */
  readonly changes: readonly ReadingChange[];
  readonly openPoints: readonly OpenPoint[];
}

/** Every rule of an edition, in the order in which a derivation tells them. */
export function rulesOf(edition: Edition): Rule[] {
  const { culture, window, criteria, date, onset, repeat, device, attribution, bloodstream, others } = edition;
  const each: (Rule | null)[] = [culture, window, ...criteria, date, onset, repeat, device, attribution, bloodstream];
  return [...each, ...others].filter((rule) => rule !== null);
}
