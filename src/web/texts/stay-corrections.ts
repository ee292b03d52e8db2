import { catalogue } from "./catalogue.ts";

/** Corrections of a stay and of time on a ward. */
export const stayCorrectionText = catalogue("stay-corrections", {
  stayActs: "Correct or void this stay",
  correctStay: "Correct this stay",
  number: "Number of the stay",
  admittedAt: "Admitted at",
  dischargedAt: "Discharged at",
  disposition: "Where to",
  voidStay: "Void this stay with everything in it",
  wardActs: "Correct or take back",
  wardActsOf: "Correct or take back: {{ward}} from {{from}}",
  correctWard: "Correct this time on a ward",
  ward: "Ward",
  bed: "Bed",
  startAt: "From",
  endAt: "To",
  absenceAfter: "Time off the wards that follows",
  noAbsence: "None, or nobody said",
  correctDo: "Record the correction",
  cancelMove: "Take this move back: the patient stayed where they were",
  voidWard: "Void this time on a ward: the patient was not there",
  reason: "Why",
});
