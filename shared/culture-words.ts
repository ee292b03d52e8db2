import { z } from "zod";
import { words } from "./vocabulary.ts";

/** What was sent to the laboratory. Other specimens decide nothing about a urinary tract infection. */
export const specimenKinds = { urine: "Urine", blood: "Blood" } as const;
export const specimenKind = z.enum(words(specimenKinds));
export type SpecimenKind = z.infer<typeof specimenKind>;

/**
 * How the laboratory looked, and why. A test that was done to screen decides nothing, a test other than a culture
 * decides for blood alone, and the tip of a catheter is no urine (common practice): CDC Patient Safety Component Manual, chapter 7 (read in the HL7 community's discussion of the
 * published CAUTI measures).
 */
export const specimenMethods = {
  culture: "Culture",
  "non-culture-test": "Test other than a culture, for diagnosis or treatment",
  screening: "Screening (surveillance) culture or test",
  "catheter-tip": "Culture of a catheter tip (never usable)",
} as const;
export const specimenMethod = z.enum(words(specimenMethods));
export type SpecimenMethod = z.infer<typeof specimenMethod>;

/** How far the laboratory's report is. Common practice; the words follow the result status of HL7 messages. */
export const specimenStatuses = {
  pending: "Pending",
  preliminary: "Preliminary",
  final: "Final",
  corrected: "Corrected",
  withdrawn: "Withdrawn by the laboratory",
} as const;
export const specimenStatus = z.enum(words(specimenStatuses));
export type SpecimenStatus = z.infer<typeof specimenStatus>;

/**
 * What kind of thing grew, as far as the definitions tell kinds apart: CDC Patient Safety Component Manual, chapter 7
 * (bacteria alone are urinary pathogens, mixed flora makes a specimen unusable). Mixed flora and no growth are no
 * organisms, but laboratories report them in the place of one.
 */
export const organismGroups = {
  bacterium: "Bacterium",
  "yeast-or-mold": "Yeast, mold or dimorphic fungus",
  "mixed-flora": "Mixed flora",
  other: "Parasite, virus or other",
  "no-growth": "No growth",
} as const;
export const organismGroup = z.enum(words(organismGroups));
export type OrganismGroup = z.infer<typeof organismGroup>;

/** In which form the laboratory gave the amount that grew. `unreadable`: somebody has to say what was meant. */
export const countKinds = {
  number: "Number",
  bound: "More or less than a number",
  range: "Category from one number to another",
  words: "Category in words",
  missing: "Not given",
  unreadable: "Cannot be read",
} as const;
export const countKind = z.enum(words(countKinds));

/**
 * Signs and symptoms that the definitions of a urinary tract infection name. Fever and hypothermia are measured as a
 * temperature. CDC Patient Safety Component Manual, chapter 7 (read in the national adaptation of Taiwan). Chills and
 * hypotension belong to criteria of bloodstream infection (chapter 4, from memory) and decide nothing about urine.
 */
export const signNames = {
  temperature: "Temperature",
  "suprapubic-tenderness": "Suprapubic tenderness",
  "costovertebral-pain": "Costovertebral angle pain or tenderness",
  urgency: "Urinary urgency",
  frequency: "Urinary frequency",
  dysuria: "Dysuria",
  apnea: "Apnea",
  bradycardia: "Bradycardia",
  lethargy: "Lethargy",
  vomiting: "Vomiting",
  chills: "Chills",
  hypotension: "Hypotension",
} as const;
export const signName = z.enum(words(signNames));
export type SignName = z.infer<typeof signName>;

/**
 * What is known of a sign. `absent`: it was looked for at the patient. `not-documented`: the chart of those days was read,
 * and the sign is not in it. `not-recorded`: the chart was not reviewed for it, so nothing is known.
 */
export const signFindings = {
  present: "Present",
  absent: "Absent (looked for)",
  "not-documented": "Reviewed, not documented",
  "not-recorded": "Not reviewed",
} as const;
export const signFinding = z.enum(words(signFindings));
export type SignFinding = z.infer<typeof signFinding>;

/** In what a temperature was measured. */
export const temperatureUnits = { C: "°C", F: "°F" } as const;
export const temperatureUnit = z.enum(words(temperatureUnits));
export type TemperatureUnit = z.infer<typeof temperatureUnit>;

/**
 * What beside a culture can support a urinary tract infection by European definitions (UTI-B): older CDC/RKI criterion
 * D1 (read); that the ECDC's HAI-Net protocols of 2016 and 2017 say the same is from memory.
 */
export const urineFindings = {
  "leukocyte-esterase-or-nitrite": "Dipstick positive for leukocyte esterase or nitrite",
  pyuria: "White blood cells in urine (10 or more per mm³)",
  "gram-stain": "Microorganisms on a Gram stain of unspun urine",
  "physician-diagnosis": "A physician's diagnosis of a urinary tract infection",
  "physician-treatment": "A physician's treatment of a urinary tract infection",
  "effective-antimicrobial": "Effective antimicrobial treatment under way",
} as const;
export const urineFinding = z.enum(words(urineFindings));
export type UrineFinding = z.infer<typeof urineFinding>;

/** What a determination of one urine specimen or finding comes to. */
export const determinationOutcomes = {
  event: "Definition met",
  repeat: "Belongs to an earlier event",
  "not-met": "Definition not met",
  "cannot-tell": "Cannot be determined yet",
  pending: "Waiting for the laboratory",
  negative: "No growth",
  "not-usable": "Culture cannot be used",
  excluded: "Met, but excluded from reporting",
  "after-discharge": "Met, but too long after discharge",
  "set-aside": "Set aside",
} as const;
export const determinationOutcome = z.enum(words(determinationOutcomes));
export type DeterminationOutcome = z.infer<typeof determinationOutcome>;

/** What one step of a derivation came to. */
export const stepStatuses = {
  held: "Met",
  failed: "Not met",
  "cannot-tell": "Cannot be determined",
  noted: "Noted",
} as const;
export const stepStatus = z.enum(words(stepStatuses));
export type StepStatus = z.infer<typeof stepStatus>;

/** Where an infection began: CDC Patient Safety Component Manual, chapter 2 (read in its frequently asked questions). */
export const onsets = {
  "present-on-admission": "Present on admission",
  "healthcare-associated": "Healthcare-associated",
} as const;
export const onset = z.enum(words(onsets));
export type Onset = z.infer<typeof onset>;

/** Said beside every determination. */
export const determinationCaution = "A surveillance determination is not a diagnosis and must not guide treatment.";
