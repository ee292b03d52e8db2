import type { DeterminationOutcome, Onset, StepStatus } from "../../../shared/culture-words.ts";
import type { DayNumber } from "../days/day-number.ts";
import type { EditionOptions } from "./edition.ts";
import type { RuleId } from "./rule.ts";
import type { TemperatureDays } from "./temperature-days.ts";

/** A record that a step rests on. */
export interface Evidence {
  readonly kind: "specimen" | "organism" | "sign" | "finding" | "catheter" | "stay" | "ward" | "patient";
  readonly id: number;
}

/** One sentence of a derivation. The source is the rule's. */
export interface Step {
  readonly rule: RuleId;
  readonly status: StepStatus;
  /** The day that the sentence is about, where it is about one. */
  readonly day: DayNumber | null;
  readonly sentence: string;
  readonly evidence: readonly Evidence[];
  /** For what does not hold: the recorded evidence that came nearest. */
  readonly nearest: string | null;
  /** For what cannot be told: what to look up. */
  readonly lookUp: string | null;
  /** Of the step about temperatures alone: on how many of the days in which fever would count there is one. */
  readonly temperature?: TemperatureDays;
}

/** Days from first to last, both included. */
export interface DayRange {
  readonly first: DayNumber;
  readonly last: DayNumber;
}

/** What an edition says of an infection that meets a definition. */
export interface SurveillanceEvent {
  readonly criterion: RuleId;
  readonly dateOfEvent: DayNumber;
  /** The day of the first element, which may lie before the first inpatient day. */
  readonly firstElementDay: DayNumber;
  readonly window: DayRange & { readonly usableFrom: DayNumber };
  /** 1 is the first day on an inpatient ward. */
  readonly hospitalDay: number;
  /** The day of the catheter on the date of event, as eligibility counts; null without one on that day. */
  readonly catheterDay: number | null;
  readonly onset: Onset;
  readonly deviceAssociated: boolean;
  /** Healthcare-associated and device-associated: it counts against catheter-days. */
  readonly isCauti: boolean;
  readonly repeatTimeframe: DayRange;
  /** null where the edition has no such period. */
  readonly bloodstreamPeriod: DayRange | null;
  /** The ward to which a healthcare-associated event belongs; null when it was present on admission. */
  readonly wardId: number | null;
  /** Canonical names of the organisms that are reported; those of repeats are added. */
  readonly pathogens: readonly string[];
  readonly addedPathogens: readonly string[];
  /** Blood specimens by which a bloodstream infection is secondary to this event. */
  readonly secondaryBloodstream: readonly number[];
  /** Blood specimens of the period whose result is not known yet. */
  readonly bloodstreamWaiting: readonly number[];
}

/** What a determination is about: a urine specimen, or, in editions that take it, a finding in urine. */
export interface Subject {
  readonly kind: "specimen" | "finding";
  readonly id: number;
  readonly day: DayNumber;
}

/** An open point of which another reading gives another answer. */
export interface Hinge {
  readonly option: keyof EditionOptions;
  readonly point: string;
  /** In force. */
  readonly reading: string;
  readonly otherReading: string;
  /** What the other reading comes to, in words. */
  readonly otherAnswer: string;
  /** Whether a catheter-associated infection appears or goes with it. */
  readonly changesCauti: boolean;
  /** What the reading in force does not use and the other does, in words, with the entries; null where it is no entry. */
  readonly setAside: string | null;
  readonly evidence: readonly Evidence[];
}

export interface Determination {
  readonly subject: Subject;
  readonly editionId: string;
  readonly outcome: DeterminationOutcome;
  /** No growth, unusable or withdrawn, certain whatever is not known: it closes without a person. */
  readonly closes: boolean;
  /** Of `event` and `excluded`; null otherwise. */
  readonly event: SurveillanceEvent | null;
  /** Of `repeat`: the subject of the event that it belongs to. */
  readonly repeatOf: Subject | null;
  /** Undetermined subjects that may turn this event into a repeat of theirs. */
  readonly dependsOn: readonly Subject[];
  /** What other readings of open points would say, in one text; null when all of them say the same. */
  readonly otherReading: string | null;
  /** The open points on whose reading the answer hinges. Empty where they were not tried. */
  readonly hinges: readonly Hinge[];
  readonly derivation: readonly Step[];
}

/** Whether "no infection", or one without symptoms, rests on temperatures of fewer than half of the days. */
export function restsOnFewTemperatures({ outcome, event, derivation }: Determination): boolean {
  if (outcome !== "not-met" && event?.criterion !== "abuti") return false;
  return derivation.some(({ temperature: one }) => one !== undefined && one.measured * 2 < one.of);
}
