import { catalogue } from "./catalogue.ts";

export const patientCorrectionText = catalogue("patient-correction", {
  summary: "Correct the day of birth or the sex",
  why: "Some definitions ask for the age: without the day of birth, they cannot be determined.",
  birthDay: "Day of birth",
  sex: "Sex",
  female: "female",
  male: "male",
  other: "other",
  unknown: "unknown",
  notRecorded: "not recorded",
  reason: "Why",
  record: "Record the correction",
  readAgain: "Read the record again",
});
