import { z } from "zod";
import { month } from "./day.ts";
import { figureKeys } from "./figure-words.ts";
import { id, instantText } from "./wire.ts";

/** The header with which a person says that a change of signed months is right: the digits of the refusal. */
export const acknowledgeHeader = "acknowledge-signed-months";

const value = z.union([z.string(), z.number()]).nullable();

/** One figure of a signed month, before and after a change of the record. */
export const figureChange = z
  .strictObject({
    wardId: id.nullable().describe("Null: all wards together, or the report as a whole"),
    ward: z.string().nullable(),
    figure: z.enum(figureKeys).nullable().describe("Null: something else than a figure"),
    what: z.string(),
    before: value,
    after: value,
  })
  .meta({ id: "FigureChange" });
export type FigureChange = z.infer<typeof figureChange>;

/** What was recorded or changed. */
export const changedEntry = z
  .strictObject({ kind: z.enum(["catheter", "patient", "case", "import", "ward"]), id, patientId: id.nullable() })
  .meta({ id: "ChangedEntry" });
export type ChangedEntry = z.infer<typeof changedEntry>;

/** What an act would change of signed months, as a refusal tells it. */
export const signedChanges = z
  .strictObject({
    acknowledge: z
      .string()
      .describe(`Stands for these changes: sent in the header ${acknowledgeHeader}, they are recorded`),
    months: z.array(
      z.strictObject({
        month,
        signedAt: instantText,
        signedBy: z.string().describe("The name of the person"),
        figures: z.array(figureChange).describe("Of the wards that the person may see"),
        hasOthers: z.boolean().describe("Figures of other wards change too"),
      }),
    ),
  })
  .meta({ id: "SignedChanges" });
export type SignedChanges = z.infer<typeof signedChanges>;
