import { catalogue } from "./catalogue.ts";

export const termsText = catalogue("termsPage", {
  title: "Glossary",
  lead: "The trade terms on these pages, what they mean here, and their sources.",
  source: "Source: {{source}}",
  all: "Glossary",
});

const manual = "CDC Patient Safety Component Manual";

/** Every term of the trade: the word, what it means here, and its source. */
const terms = {
  "patient-day.word": "Patient-day",
  "patient-day.means":
    "One patient who is on an inpatient unit at the daily census. A month's patient-days are the sum over its days.",
  "patient-day.source": `${manual}, chapter 7, and key terms in chapter 16`,
  "catheter-day.word": "Catheter-day",
  "catheter-day.means":
    "One patient on an inpatient unit who has an indwelling urethral catheter in place at the daily census. Several catheters in one patient are one catheter-day.",
  "catheter-day.source": `${manual}, chapter 7`,
  "utilization.word": "Device utilization ratio",
  "utilization.means":
    "Catheter-days divided by patient-days: the share of patient-days on which a catheter was in place.",
  "utilization.source": `${manual}, chapter 7`,
  "census.word": "Census",
  "census.means":
    "The daily count of patients and of catheters in place, taken at the same time each day. Days are counted by it, whatever happens in between.",
  "census.source": `${manual}, chapter 7`,
  "indwelling.word": "Indwelling urethral catheter",
  "indwelling.means":
    "A tube inserted into the bladder through the urethra, left in place and connected to a drainage system. Only these make catheter-days; suprapubic, external and in-and-out catheters are recorded and not counted.",
  "indwelling.source": `${manual}, chapter 7`,
  "eligibility-day.word": "Catheter day",
  "eligibility-day.means":
    "How many days in a row a catheter was in place for any part of the day on an inpatient unit. The day of insertion is day 1; an exchange without a full day off goes on counting.",
  "eligibility-day.source": `${manual}, chapter 7 (device days for eligibility)`,
  "catheter-age.word": "Dwell time",
  "catheter-age.means":
    "The age of this very catheter in days. It starts again with an exchange, and says “at least” when the insertion time is not known.",
  "catheter-age.source": "Common practice",
  "review.word": "Review",
  "review.means":
    "The daily check whether the catheter is still needed: keep it with an indication, remove it, or contact the provider.",
  "review.source": "HICPAC, Guideline for prevention of catheter-associated urinary tract infections 2009",
  "indication.word": "Indication",
  "indication.means": "Why the catheter is needed. The unit's policy lists the reasons that it accepts.",
  "indication.source": "HICPAC, Guideline for prevention of catheter-associated urinary tract infections 2009, table 2",
  "threshold.word": "Threshold",
  "threshold.means":
    "The number of catheter days after which the unit flags a catheter. The unit sets it; it is no order to remove.",
  "threshold.source": "The unit's own policy",
  "seen.word": "Confirmed in place",
  "seen.means":
    "The last entry that shows that the catheter was in place. A catheter without such an entry for longer than the policy allows may have been removed without a record.",
  "seen.source": "Common practice",
  "bundle.word": "Maintenance bundle",
  "bundle.means":
    "The few things that are checked at every care of a catheter, such as a closed system and a bag below the bladder.",
  "bundle.source": "HICPAC 2009, section III (proper techniques for urinary catheter maintenance)",
  "found.word": "Found in place on arrival",
  "found.means":
    "A catheter that was in place when the patient arrived. Counting starts on the first day on an inpatient unit; its earlier dwell time is not known.",
  "found.source": `${manual}, chapter 7 (day of device placement for patients who come with a device)`,
  "exchange.word": "Exchange",
  "exchange.means":
    "One catheter removed and another inserted without a full day between. The catheter days go on; the dwell time starts again.",
  "exchange.source": `${manual}, chapter 7`,
  "absence.word": "Time off the units",
  "absence.means":
    "Time when a patient is away from the units. With the bed held for a procedure, the day counts. On leave, or in an outpatient or procedure area with the bed not held, it does not count. An unknown reason must be resolved before signing.",
  "absence.source": "Common practice",
  "cauti.word": "CAUTI",
  "cauti.means":
    "A catheter-associated urinary tract infection by a published definition, healthcare-associated: it counts against the catheter-days of a unit. It is counted for surveillance and is not a diagnosis.",
  "cauti.source": `${manual}, chapter 7`,
  "infection-window.word": "Infection window period",
  "infection-window.means":
    "The days on which everything that a definition asks for must occur: the day on which the urine was collected, the 3 days before and the 3 days after.",
  "infection-window.source": `${manual}, chapter 2`,
  "date-of-event.word": "Date of event",
  "date-of-event.means":
    "The day in the infection window period on which the first thing that the definition asks for occurred: a sign, or the culture. It decides whether the infection was present on admission and to which unit it belongs.",
  "date-of-event.source": `${manual}, chapter 2`,
  "present-on-admission.word": "Present on admission",
  "present-on-admission.means":
    "The date of event is in the 2 days before the first inpatient day, on it or on the day after. From the third inpatient day on an infection is healthcare-associated.",
  "present-on-admission.source": `${manual}, chapter 2`,
  "repeat-timeframe.word": "Repeat infection timeframe",
  "repeat-timeframe.means":
    "14 days of which the date of event is the first. A further urinary tract infection in it is no new event: its organisms are added to the first.",
  "repeat-timeframe.source": `${manual}, chapter 2`,
  "bloodstream-period.word": "Secondary BSI attribution period",
  "bloodstream-period.means":
    "The days from the start of the infection window period to the end of the repeat infection timeframe. A matching bloodstream infection (BSI) in them counts as secondary to the urinary tract infection.",
  "bloodstream-period.source": `${manual}, chapter 2, from memory`,
  "location-of-attribution.word": "Location of attribution",
  "location-of-attribution.means":
    "The unit to which an event belongs: where the patient was on the date of event. On the day of a move, or the day after it, it is the unit that the patient came from.",
  "location-of-attribution.source": `${manual}, chapter 7 (transfer rule)`,
  "derivation.word": "Derivation",
  "derivation.means":
    "How a determination was worked out: a sentence for every rule in order, with the day, the evidence and the source of the rule.",
  "derivation.source": "A word of this program",
  "setting.word": "Setting",
  "setting.means":
    "What a unit is for: only inpatient units earn patient-days; emergency, OR and imaging are recorded and not counted.",
  "setting.source": `${manual}, chapter 7 (settings)`,
} as const;

export const termText = catalogue("terms", terms);
export type TermName = keyof typeof terms extends infer Key ? (Key extends `${infer Name}.word` ? Name : never) : never;

/** The names of all terms, in the order of the list. */
export const termNames = Object.keys(terms).flatMap((key) =>
  key.endsWith(".word") ? [key.slice(0, -".word".length) as TermName] : [],
);
