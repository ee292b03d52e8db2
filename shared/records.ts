import { z } from "zod";
import { inserter, insertionPlace, removalReason, securement, urineAppearance } from "./catheter-words.ts";

/** A short text that a person typed; it never goes into logs or messages. */
export const remark = z
  .string()
  .trim()
  .min(1, "write at least one character, or leave the field out")
  .max(500, "shorten the text to 500 characters")
  .refine((text) => !/[\p{Cc}\p{Cs}]/u.test(text.replaceAll("\n", "")), "leave out invisible characters");

const yesNo = z.boolean();

/**
 * What was written down of an insertion. A field that is left out was not recorded: that is shown as such, never as no.
 * Fields: documentation elements of a catheterization (size, balloon volume, reason, response, amount and appearance of
 * urine) and of an aseptic insertion. Common practice; the insertion bundle: AHRQ, toolkit for reducing CAUTI.
 */
export const insertionRecord = z
  .strictObject({
    orderChecked: yesNo.describe("An order was there"),
    twoIdentifiersChecked: yesNo.describe("The patient was identified by two identifiers"),
    handHygiene: yesNo,
    packageIntactInDate: yesNo.describe("Package intact and in date"),
    perinealCareDone: yesNo,
    sterileTechniqueHeld: yesNo,
    attempts: z.int(),
    securement,
    bagBelowBladder: yesNo,
    bagOffFloor: yesNo,
    urineReturnedMl: z.number().describe("Milliliters"),
    urineAppearance,
    patientResponse: remark.describe("Patient response"),
    teachingGiven: yesNo,
    insertedBy: inserter,
    insertedIn: insertionPlace,
  })
  .partial()
  .meta({ id: "InsertionRecord" });
export type InsertionRecord = z.infer<typeof insertionRecord>;

/** What was written down of a removal. A field that is left out was not recorded. */
export const removalRecord = z
  .strictObject({
    balloonWithdrawnMl: z.number().describe("Balloon volume removed, in milliliters"),
    catheterIntact: yesNo,
    reason: removalReason,
    remark,
  })
  .partial()
  .meta({ id: "RemovalRecord" });
export type RemovalRecord = z.infer<typeof removalRecord>;

/** The fields that a policy may require of an insertion: those of the record, and those of the catheter itself. */
export const recordFields = {
  orderChecked: "Order checked",
  twoIdentifiersChecked: "Two identifiers checked",
  handHygiene: "Hand hygiene",
  packageIntactInDate: "Package intact and in date",
  perinealCareDone: "Perineal care done",
  sterileTechniqueHeld: "Sterile technique held",
  attempts: "Attempts",
  sizeFr: "Size",
  balloonMl: "Balloon volume",
  indication: "Indication",
  securement: "Securement",
  bagBelowBladder: "Bag below the bladder",
  bagOffFloor: "Bag off the floor",
  urineReturnedMl: "Urine returned (mL)",
  urineAppearance: "Urine appearance",
  patientResponse: "Patient response",
  teachingGiven: "Teaching given",
  insertedBy: "Inserted by",
  insertedIn: "Where it was inserted",
} as const satisfies Record<keyof InsertionRecord | "sizeFr" | "balloonMl" | "indication", string>;
export type RecordField = keyof typeof recordFields;
