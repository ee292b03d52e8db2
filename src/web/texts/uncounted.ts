import { catalogue } from "./catalogue.ts";

export const uncountedText = catalogue("uncounted", {
  title: "Patient-days to resolve",
  range: "{{first}} to {{last}}",
  noUnit_one: "{{when}}: on no unit at the census, and no reason is recorded ({{count}} patient-day).",
  noUnit_other: "{{when}}: on no unit at the census, and no reason is recorded ({{count}} patient-days).",
  area_one: "{{when}}: in an outpatient or procedure area at the census, not confirmed ({{count}} patient-day).",
  area_other: "{{when}}: in an outpatient or procedure area at the census, not confirmed ({{count}} patient-days).",
  stake: "Units before and after: {{units}}.",
  noUnitRemedy:
    "Add the missing move, record time off the unit with its reason, or correct the admission or discharge.",
  missingMove: "Add the missing move",
  areaRemedy:
    "Open “Correct or take back” for the unit before. Choose “Outpatient or procedure area, bed not held”, or take back a move entered in error.",
});
