import { z } from "zod";
import { type RecordField, recordFields } from "./records.ts";

/** A word of a policy's own lists, such as `retention-or-obstruction`. */
export const policyCode = z
  .string()
  .regex(/^[a-z][a-z0-9-]{0,59}$/, "write a short name of small letters, digits and hyphens");

const listed = z.strictObject({
  code: policyCode,
  label: z.string().min(1).max(200),
  source: z.string().min(1).max(300).describe("Where the unit has it from"),
});
export type PolicyItem = z.infer<typeof listed>;

const hour = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, "write the time as HH:MM, from 00:00 to 23:59");
const thresholdDays = z.int().min(1).max(365);

/** What a unit wants done for its catheters. The tool shows it and reminds; it orders nothing. */
export const policyBody = z
  .strictObject({
    indications: z.array(listed).min(1).max(50).describe("The indications that the unit accepts"),
    reviewFromDay: z.int().min(1).max(30).describe("The eligibility day from which a review is due each day"),
    reviewDueAt: hour.describe("Local time by which the day's review is due"),
    thresholdDays: thresholdDays
      .nullable()
      .describe("Eligibility days after which a catheter is past the threshold; null: none"),
    thresholdByIndication: z.record(policyCode, thresholdDays).describe("Other thresholds, by indication"),
    requiredFields: z
      .array(z.enum(Object.keys(recordFields) as RecordField[]))
      .max(30)
      .describe("What an insertion must record"),
    bundle: z.array(listed).min(1).max(30).describe("The items of a maintenance bundle check"),
    confirmationHours: z
      .int()
      .min(1)
      .max(24 * 14)
      .describe("Hours after which a catheter that is not confirmed in place is doubtful"),
    bedHoldHours: z
      .int()
      .min(1)
      .max(24 * 14)
      .nullable()
      .describe("Hours that a bed is held during a procedure before it is listed; null: no limit"),
  })
  .meta({ id: "PolicyBody" });
export type PolicyBody = z.infer<typeof policyBody>;
