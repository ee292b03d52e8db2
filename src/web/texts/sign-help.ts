import type { SignName } from "../../../shared/culture-words.ts";
import { catalogue } from "./catalogue.ts";

const needsNoCatheter = "Counts only while no catheter is in place.";
const ofBlood =
  "Used only for bloodstream infection criteria (chapter 4, from memory). Never counts for a urinary tract infection.";
const starred = "Counts up to 1 year of age, if no other cause is recognized.";

/**
 * What counts as each sign, and what does not: CDC Patient Safety Component Manual, chapter 7, read in the national
 * adaptation of Taiwan; that fever may not be set aside for another cause is from memory.
 */
export const signHelpText = catalogue("signHelp", {
  temperature: "Fever is a temperature above 38.0 °C (100.4 °F). It counts even with another possible cause.",
  "suprapubic-tenderness":
    "Counts, on palpation or as reported: lower abdominal pain or tenderness, bladder or pelvic discomfort. Does not count: generalized abdominal pain.",
  "costovertebral-pain":
    "Counts: pain or tenderness of the left or right flank or lower back. Does not count: generalized low back pain.",
  urgency: needsNoCatheter,
  frequency: needsNoCatheter,
  dysuria: needsNoCatheter,
  apnea: starred,
  bradycardia: starred,
  lethargy: starred,
  vomiting: starred,
  chills: ofBlood,
  hypotension: ofBlood,
} satisfies Record<SignName, string>);
