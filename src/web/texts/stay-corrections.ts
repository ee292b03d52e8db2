import { catalogue } from "./catalogue.ts";

/** Corrections of a stay and of time on a ward. */
export const stayCorrectionText = catalogue("stay-corrections", {
  stayActs: "Correct this stay, or mark it as entered in error",
  correctStay: "Correct this stay",
  number: "Number of the stay",
  admittedAt: "Admitted at",
  dischargedAt: "Discharged at",
  disposition: "Where to",
  voidStay: "Mark this stay and everything in it as entered in error",
  wardActs: "Correct or take back",
  wardActsOf: "Correct or take back: {{ward}} from {{from}}",
  correctWard: "Correct this time on a unit",
  ward: "Unit",
  bed: "Bed",
  startAt: "From",
  endAt: "To",
  absenceAfter: "Time off the units that follows",
  noAbsence: "None, or not recorded",
  correctDo: "Record the correction",
  cancelMove: "Take this move back: the patient stayed where they were",
  voidWard: "Mark this time on a unit as entered in error: the patient was not there",
  reason: "Why",
});
