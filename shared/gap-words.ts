import { hourGapWords } from "./hour-gap-words.ts";

const rejected = "Open the lines in their import. Fix each line, or drop it with a reason.";
const held = { signed: true, remedy: rejected } as const;

/**
 * What may be missing from a month, or doubtful in it, and the remedy. Words in braces are filled in. `signed`: no
 * figure shows it, so a signature holds it and a change of it is a difference.
 */
export const gapWords = {
  "rejected-stays": {
    blocks: true,
    ...held,
    one: "1 line of a stay is rejected and held for repair.",
    several: "{count} lines of stays are rejected and held for repair.",
  },
  "rejected-moves": {
    blocks: true,
    ...held,
    one: "1 line of a move is rejected and held for repair, so patient-days can be missing.",
    several: "{count} lines of moves are rejected and held for repair, so patient-days can be missing.",
  },
  "rejected-catheters": {
    blocks: true,
    ...held,
    one: "1 line of a catheter is rejected and held for repair, so catheter-days can be missing.",
    several: "{count} lines of catheters are rejected and held for repair, so catheter-days can be missing.",
  },
  "period-not-over": {
    blocks: true,
    one: "The month is not over: patients still here are counted up to now.",
    several: "The month is not over: patients still here are counted up to now.",
    remedy: "Wait until the last day of the month is over and its census has been taken.",
  },
  "setting-missing": {
    blocks: true,
    one: "The setting of this unit is not recorded for these days, so its patient-days are not counted.",
    several: "The setting of this unit is not recorded for these days, so its patient-days are not counted.",
    remedy: "In the settings, describe the unit from its first day: inpatient, outpatient or procedure.",
  },
  "absence-at-census": {
    blocks: true,
    one: "1 patient-day may be missing: a patient was on no unit at the census, and no reason is recorded.",
    several: "{count} patient-days may be missing: a patient was on no unit at the census, and no reason is recorded.",
    remedy:
      "Open the patient's record. Add the missing move, record time off the unit with its reason, or correct the admission or discharge.",
  },
  "outpatient-at-census": {
    blocks: true,
    one: "1 patient-day to confirm: a patient was in an outpatient or procedure area at the census, between two inpatient units.",
    several:
      "{count} patient-days to confirm: a patient was in an outpatient or procedure area at the census, between two inpatient units.",
    remedy:
      "Open the patient's record, then “Correct or take back” for the unit before. Choose “Outpatient or procedure area, bed not held”, or take back the wrong move.",
  },
  "edition-unknown": {
    blocks: true,
    one: "The surveillance edition of this unit is not available here, so the United States edition is used.",
    several: "The surveillance editions of this unit are not available here, so the United States edition is used.",
    remedy:
      "Under Settings, mark this surveillance as entered in error. Put the unit under surveillance by an available edition.",
  },
  "cultures-waiting": {
    blocks: true,
    one: "1 positive culture waits for confirmation.",
    several: "{count} positive cultures wait for confirmation.",
    remedy: "Look at each and confirm what was determined, or correct what is recorded.",
  },
  "cannot-be-determined": {
    blocks: true,
    one: "1 culture cannot be determined yet.",
    several: "{count} cultures cannot be determined yet.",
    remedy: "Look up what the case names, or confirm that it cannot be determined. It is then listed beside the count.",
  },
  "cultures-pending": {
    blocks: true,
    one: "1 culture that can still give an event of this month waits for the laboratory.",
    several: "{count} cultures that can still give an event of this month wait for the laboratory.",
    remedy: "Record the laboratory's report.",
  },
  "none-found-missing": {
    blocks: true,
    one: "The unit is under surveillance and has no event. No one has confirmed “No infection identified”.",
    several: "The unit is under surveillance and has no event. No one has confirmed “No infection identified”.",
    remedy: "Review the cultures of the unit, then confirm “No infection identified”.",
  },
  "rejected-specimens": {
    blocks: false,
    ...held,
    one: "1 line of a specimen is rejected and held for repair, so an infection can be missing.",
    several: "{count} lines of specimens are rejected and held for repair, so infections can be missing.",
  },
  "rejected-signs": {
    blocks: false,
    ...held,
    one: "1 line of a sign is rejected and held for repair, so an infection can be missing.",
    several: "{count} lines of signs are rejected and held for repair, so infections can be missing.",
  },
  "rejected-reviews": {
    blocks: false,
    ...held,
    one: "1 line of a review is rejected and held for repair, so a review can be missing.",
    several: "{count} lines of reviews are rejected and held for repair, so reviews can be missing.",
  },
  "rejected-counts": {
    blocks: false,
    ...held,
    one: "1 line of a manual count is rejected and held for repair.",
    several: "{count} lines of manual counts are rejected and held for repair.",
  },
  "rejected-wards": {
    blocks: false,
    ...held,
    one: "1 line that describes a unit is rejected and held for repair.",
    several: "{count} lines that describe units are rejected and held for repair.",
  },
  "dropped-lines": {
    ...{ blocks: false, signed: true },
    one: "1 rejected line was dropped and is in no figure. Its reason is listed.",
    several: "{count} rejected lines were dropped and are in no figure. Their reasons are listed.",
    remedy: "Nothing to do. The reasons print with the month.",
  },
  "marked-lines": {
    ...{ blocks: false, signed: true },
    one: "1 imported line is stored and flagged as doubtful.",
    several: "{count} imported lines are stored and flagged as doubtful.",
    remedy: "Open the lines in their import, and correct the entries where the file was wrong.",
  },
  "import-waiting": {
    blocks: false,
    one: "1 import with lines of this month is not stored yet.",
    several: "{count} imports with lines of this month are not stored yet.",
    remedy: "Open the import, and store or discard it.",
  },
  "import-broken": {
    blocks: false,
    one: "1 import with lines of this month has a file that cannot be read to its end. Nothing of it is stored.",
    several: "{count} imports with lines of this month have a file that cannot be read to its end. Nothing is stored.",
    remedy: "Correct the file at the place that the import names, and send the files again.",
  },
  "import-refused": {
    blocks: false,
    one: "1 import with lines of this month was refused, and nothing of it is stored.",
    several: "{count} imports with lines of this month were refused, and nothing of them is stored.",
    remedy: "Correct the lines and import the files again.",
  },
  "ward-not-open": {
    blocks: true,
    one: "1 stay on this unit begins before the unit is described. Those patient-days are not counted.",
    several: "{count} stays on this unit begin before the unit is described. Those patient-days are not counted.",
    remedy: "Correct the move, or describe the unit from an earlier day.",
  },
  "nobody-counted": {
    blocks: false,
    one: "No patient was counted on this unit in the whole period.",
    several: "No patient was counted on this unit in the whole period.",
    remedy: "Check whether the unit was closed, or admissions and moves were not recorded.",
  },
  "no-patient": {
    blocks: false,
    one: "On 1 day no patient was on this unit at the census.",
    several: "On {count} days no patient was on this unit at the census.",
    remedy: "Check whether the unit was empty, or admissions and moves were not recorded.",
  },
  "manual-count-missing": {
    blocks: false,
    one: "1 day of this unit was not counted by hand.",
    several: "{count} days of this unit were not counted by hand.",
    remedy: "Record the counts that were made; a day that no one counted stays missing.",
  },
  "manual-count-differs": {
    ...{ blocks: false, signed: true },
    one: "On 1 day the manual count differs from the electronic count.",
    several: "On {count} days the manual count differs from the electronic count.",
    remedy: "Compare these days with the unit's count sheet. Add the missing entries, or correct the manual count.",
  },
  "stay-not-described": {
    ...{ blocks: false, signed: true },
    one: "1 stay has no admission and discharge of its own. Both are taken from its moves.",
    several: "{count} stays have no admission and discharge of their own. Both are taken from their moves.",
    remedy: "Check whether its line in stays.csv is missing. Then record the admission and discharge.",
  },
  ...hourGapWords,
  "not-confirmed": {
    blocks: false,
    one: "1 catheter was not confirmed in place for longer than the policy allows, and is still counted.",
    several: "{count} catheters were not confirmed in place for longer than the policy allows, and are still counted.",
    remedy: "Look at the patient: confirm that the catheter is in place, or record its removal.",
  },
  "bed-held-long": {
    blocks: false,
    one: "1 bed was held for a procedure for longer than the policy says; its unit days are counted.",
    several: "{count} beds were held for procedures for longer than the policy says; their unit days are counted.",
    remedy: "Record when the patient came back, moved or was discharged.",
  },
} as const;
export type GapKind = keyof typeof gapWords;
