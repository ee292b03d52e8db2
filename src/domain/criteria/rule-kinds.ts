import type { Onset, SignName, StepStatus } from "../../../shared/culture-words.ts";
import type { DayNumber } from "../days/day-number.ts";
import type { DayRange, Evidence, Subject } from "./determination.ts";
import type { CultureQuestion, PossibleCulture } from "./possible-cultures.ts";
import type { Rule } from "./rule.ts";
import type { WindowSigns } from "./signs-in-window.ts";
import type { GrownOrganism, Specimen } from "./surveillance-timeline.ts";
import type { Episode, World } from "./world.ts";

/** The days around an anchor; elements count from `usableFrom` on. */
export type Window = DayRange & { readonly usableFrom: DayNumber };

/** What a rule says in a derivation. */
export interface Said {
  readonly status: StepStatus;
  readonly day: DayNumber | null;
  readonly sentence: string;
  readonly evidence: readonly Evidence[];
  readonly nearest?: string | null;
  readonly lookUp?: string | null;
}

/** What a criterion is judged by: one anchor in one window of one episode. */
export interface CriterionFacts {
  readonly world: World;
  readonly episode: Episode;
  readonly anchor: Subject;
  readonly window: Window;
  readonly signs: WindowSigns;
  /** The culture of the anchor; null for an anchor that is none, or whose culture is not usable. */
  readonly culture: UsableCulture | null;
}

/** Held: with the day of its first element. */
export interface Verdict extends Said {
  readonly firstElementDay: DayNumber | null;
}

/** A urine culture that can be an element, with what of it is a pathogen. */
export interface UsableCulture {
  readonly specimen: Specimen;
  readonly pathogens: readonly GrownOrganism[];
}

/** What a urine specimen is worth. */
export interface CultureVerdict extends Said {
  readonly outcome: "usable" | "negative" | "not-usable" | "pending" | "cannot-tell" | "set-aside";
  /** Certain whatever is not known: no growth, of no use, withdrawn. It closes without a person. */
  readonly closes: boolean;
  readonly isAfterDeath: boolean;
  /** Of `usable` and `cannot-tell`: every way in which the culture can turn out. Empty where none was tried. */
  readonly possible: readonly PossibleCulture[];
  readonly questions: readonly CultureQuestion[];
}

export interface WindowRule extends Rule {
  windowOf(anchorDay: DayNumber, episode: Episode, world: World): Window;
}
export interface CultureRule extends Rule {
  judge(specimen: Specimen, world: World): CultureVerdict;
}
export interface CriterionRule extends Rule {
  judge(facts: CriterionFacts): Verdict;
}
export interface DateRule extends Rule {
  /** What the date is the day of: "the first element". */
  readonly dayOf: string;
  /** The date of event by the day of the first element. */
  dateOf(firstElementDay: DayNumber, episode: Episode): DayNumber;
  /** Whether the anchor itself is an element that can date the event. */
  readonly anchorDates: boolean;
}
export interface OnsetRule extends Rule {
  onsetOf(dateOfEvent: DayNumber, episode: Episode, world: World): Onset;
}
export interface DeviceRule extends Rule {
  /** What was so on the date of event where the rule holds, and where it does not; follows "on 10 March 2024". */
  readonly tells: { readonly held: string; readonly failed: string };
  isAssociated(dateOfEvent: DayNumber, episode: Episode, world: World): boolean;
}
export interface PeriodRule extends Rule {
  periodOf(dateOfEvent: DayNumber, window: Window, world: World): DayRange;
}
export interface AttributionRule extends Rule {
  wardOf(dateOfEvent: DayNumber, episode: Episode, world: World): number | null;
}

/** A sign as criteria name it: a temperature is fever, hypothermia or neither; those of blood criteria are none. */
export type CriterionSign = Exclude<SignName, "temperature" | "chills" | "hypotension"> | "fever" | "hypothermia";
