import { z } from "zod";

/** What an endpoint lets a person do. Which role holds which, and over which wards, is a rule and is kept elsewhere. */
export const permissions = {
  "see-own-account": "See who you are here and what you may do",
  "see-facility": "See the facility and its settings",
  "see-wards": "See the units",
  "see-counts": "See patient-days and catheter-days",
  "compare-wards": "Compare units of the facility, as figures alone",
  "see-patients": "See the patients behind a figure",
  "record-care": "Record stays, catheters and their care",
  "judge-cases": "Work on determinations of infections: confirm them, disagree, confirm no infection identified",
  "merge-patients": "Merge records of one person",
  "count-by-hand": "Record what was counted by hand",
  "see-policy": "See the policy",
  "set-policy": "Set the policy",
  "see-baselines": "See what months are compared with",
  "set-baselines": "Add baselines, and set what months are compared with",
  "sign-month": "Sign a month",
  "set-wards": "Describe units and set which are under surveillance",
  "import-records": "Import files of records, and fix lines held for repair",
  "set-facility": "Set the census time of the facility",
  "see-changes": "See what changed in patients' records",
  "see-audit": "See who did and saw what",
} as const;
export const permission = z.enum(Object.keys(permissions) as (keyof typeof permissions)[]);
export type Permission = z.infer<typeof permission>;
