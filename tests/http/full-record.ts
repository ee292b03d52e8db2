/** An insertion's record with all that the built-in policy asks for. */
export const fullRecord = {
  orderChecked: true,
  twoIdentifiersChecked: true,
  handHygiene: true,
  packageIntactInDate: true,
  perinealCareDone: true,
  sterileTechniqueHeld: true,
  attempts: 1,
  securement: "device",
  bagBelowBladder: true,
  bagOffFloor: true,
  urineReturnedMl: 350,
  urineAppearance: "clear",
  patientResponse: "Tolerated well",
  teachingGiven: true,
  insertedBy: "registered-nurse",
  insertedIn: "ward",
} as const;
