import { catalogue } from "./catalogue.ts";

/** What pages say about whose record they show. */
export const patientText = catalogue("patient", {
  what: "the patient's record",
  patient: "Patient",
  ward: "Unit",
  bed: "Bed",
  noBed: "none recorded",
  born: "Born",
  bornUnknown: "not recorded",
  gone: "This record does not have that entry",
  goneDetail: "It may have been merged, or the address is wrong.",
});
