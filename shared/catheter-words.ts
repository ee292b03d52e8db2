import { z } from "zod";
import { words } from "./vocabulary.ts";

/**
 * Why a catheter is needed. Which of these a unit accepts is its policy; the others can be recorded all the same, because
 * what was the case must not be lost. The first six: HICPAC, Guideline for prevention of catheter-associated urinary
 * tract infections 2009, table 2. The seventh: Meddings et al., Ann Intern Med 2015;162(9 Suppl):S1-34 (from memory).
 * The last three are named as inappropriate by the HICPAC guideline, or are no reason of their own (common practice).
 */
export const indications = {
  "retention-or-obstruction": "Acute urinary retention or bladder outlet obstruction",
  "output-critically-ill": "Accurate urine output in a critically ill patient",
  perioperative: "Perioperative use for selected surgery",
  "wound-healing": "Healing of an open sacral or perineal wound in an incontinent patient",
  immobilization: "Prolonged immobilization (unstable spine, pelvic fracture, multiple trauma)",
  "end-of-life": "Comfort at the end of life",
  "hematuria-clots": "Blood in the urine with clots",
  incontinence: "Incontinence care",
  "specimen-collection": "Getting a specimen",
  other: "Another reason",
} as const;

/** What a review decided. `ask`: the provider is contacted; a later review answers. */
export const reviewOutcomes = {
  keep: "Still needed",
  remove: "Remove",
  ask: "Contact provider",
} as const;
export const reviewOutcome = z.enum(words(reviewOutcomes));
export type ReviewOutcome = z.infer<typeof reviewOutcome>;

/** What can be written down about a catheter while it is in place. */
export const noteKinds = {
  review: "Review",
  confirmation: "Confirmed in place",
  "care-check": "Maintenance bundle check",
  "urine-output": "Urine output",
} as const;
export const noteKind = z.enum(words(noteKinds));
export type NoteKind = z.infer<typeof noteKind>;

/** How an item of a maintenance bundle check was found. What no one checked is left out and shown as not recorded. */
export const itemStates = { kept: "Kept", broken: "Not kept", "not-applicable": "Does not apply" } as const;
export const itemState = z.enum(words(itemStates));
export type ItemState = z.infer<typeof itemState>;

/** Who inserted the catheter. Common practice. */
export const inserters = {
  "registered-nurse": "Registered nurse",
  "practical-nurse": "Licensed practical nurse",
  physician: "Physician",
  "advanced-practice": "Advanced practice provider",
  student: "Student under supervision",
  other: "Another person",
} as const;
export const inserter = z.enum(words(inserters));

/** Where the catheter was inserted. Common practice. */
export const insertionPlaces = {
  ward: "Unit",
  theater: "OR",
  emergency: "Emergency department",
  elsewhere: "Elsewhere, also before this stay",
} as const;
export const insertionPlace = z.enum(words(insertionPlaces));

/** Securement of the catheter. Common practice. */
export const securements = {
  device: "Securement device",
  tape: "Tape",
  strap: "Leg strap",
  none: "Not secured",
} as const;
export const securement = z.enum(words(securements));

/** Urine appearance. Common practice. */
export const urineAppearances = {
  clear: "Clear",
  cloudy: "Cloudy",
  dark: "Dark yellow or brown",
  bloody: "Bloody",
  clots: "With clots",
  sediment: "With sediment",
} as const;
export const urineAppearance = z.enum(words(urineAppearances));

/** Why a catheter was removed. Common practice; the prompt removal of what is not needed: HICPAC 2009. */
export const removalReasons = {
  "no-longer-needed": "No longer needed",
  exchange: "Exchanged for another catheter",
  blocked: "Blocked or leaking",
  "pulled-out": "Pulled or fell out",
  "infection-suspected": "Infection suspected",
  "patient-wish": "Patient request",
  other: "Another reason",
} as const;
export const removalReason = z.enum(words(removalReasons));
