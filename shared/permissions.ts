import { z } from "zod";

/** What an endpoint lets a person do. Which role holds which, and over which wards, is a rule and stands elsewhere. */
export const permissions = {
  "see-own-account": "See who you are here and what you may do",
  "see-facility": "See the facility and its settings",
  "see-wards": "See the wards",
  "see-counts": "See patient-days and catheter-days",
  "see-patients": "See the patients behind a figure",
  "record-care": "Record stays, catheters and their care",
  "merge-patients": "Merge records of one person",
  "count-by-hand": "Record what was counted by hand",
  "see-policy": "See the policy",
  "set-policy": "Set the policy",
  "see-changes": "See what changed in patients' records",
  "see-audit": "See who did and saw what",
} as const;
export const permission = z.enum(Object.keys(permissions) as (keyof typeof permissions)[]);
export type Permission = z.infer<typeof permission>;
