import { z } from "zod";
import { inserters, insertionPlaces } from "./catheter-words.ts";
import { day, month } from "./day.ts";
import { figureKeys } from "./figure-words.ts";
import { words } from "./vocabulary.ts";
import { id, instantText } from "./wire.ts";

/** One figure. What is null has its reason beside it; nothing is rounded. */
export const figure = z
  .strictObject({
    key: z.enum(figureKeys),
    value: z.number().nullable(),
    numerator: z.number().nullable(),
    denominator: z.number().nullable(),
    lower: z.number().nullable(),
    upper: z.number().nullable(),
    p: z.number().nullable().describe("Two-sided, against a ratio of 1"),
    method: z.string().nullable().describe("How the value or its limits are found"),
    reason: z.string().nullable().describe("Why there is no value"),
    open: z
      .int()
      .min(1)
      .nullable()
      .optional()
      .describe(
        "Cultures behind it that are not decided, so that it is not final; null: none. Signed before: left out",
      ),
    limitsReason: z.string().nullable().describe("Why a limit or the p value is missing where there could be one"),
  })
  .meta({ id: "Figure" });
export type Figure = z.infer<typeof figure>;

/** Who inserted and where, of the catheters inserted in the month. Null: nobody wrote it down. */
export const insertionCounts = z
  .strictObject({
    places: z.array(z.strictObject({ place: z.enum(words(insertionPlaces)).nullable(), count: z.int().min(1) })),
    inserters: z.array(z.strictObject({ inserter: z.enum(words(inserters)).nullable(), count: z.int().min(1) })),
  })
  .meta({ id: "InsertionCounts" });
export type InsertionCounts = z.infer<typeof insertionCounts>;

/** What a baseline predicts for a ward, term by term. */
const predictionShown = z
  .strictObject({
    value: z.number().nullable(),
    reason: z.string().nullable(),
    steps: z.array(z.strictObject({ what: z.string(), value: z.number() })),
  })
  .meta({ id: "Prediction" });

export const wardFigures = z
  .strictObject({
    wardId: id,
    code: z.string(),
    name: z.string(),
    type: z.string().nullable(),
    edition: z.string().nullable().describe("The definitions by which infections are determined; null: not watched"),
    nonDefaultReadings: z
      .array(z.string())
      .optional()
      .describe("Open points that the facility reads otherwise than the edition in this month; left out: none"),
    denominators: z.string().describe("How patient-days and catheter-days were counted"),
    predicted: z.strictObject({ infections: predictionShown, catheterDays: predictionShown }),
    figures: z.array(figure),
    insertions: insertionCounts,
  })
  .meta({ id: "WardFigures" });
export type WardFigures = z.infer<typeof wardFigures>;

/** A baseline as a report names it. */
export const baselineNamed = z
  .strictObject({
    baselineId: id,
    name: z.string(),
    source: z.string(),
    year: z.string(),
    definition: z.string(),
    population: z.string(),
    edition: z.string(),
  })
  .meta({ id: "BaselineNamed" });
export type BaselineNamed = z.infer<typeof baselineNamed>;

/** Something that is missing from a month, or doubtful in it, as it was when the figures were read. */
export const completenessItem = z
  .strictObject({
    kind: z.string(),
    ward: z.string().nullable().describe("The code of the ward that it belongs to; null when it belongs to none alone"),
    count: z.int(),
    sentence: z.string(),
    lines: z
      .array(
        z.strictObject({
          importId: id,
          file: z.string(),
          line: z.int().describe("0: the whole file"),
          wards: z.array(z.string()).nullable().describe("Codes of the wards that it touches; null: not readable"),
          dated: z.boolean().describe("False: its month cannot be read"),
          reason: z.string().nullable().describe("Why it was dropped"),
          by: z.string().nullable().describe("Who dropped it"),
          at: instantText.nullable(),
        }),
      )
      .describe("Lines of imports that it is about, without what they say"),
  })
  .meta({ id: "CompletenessItem" });
export type CompletenessItem = z.infer<typeof completenessItem>;

/** By which published rule limits are found. */
export const limitRules = {
  "mid-p": "Mid-P limits",
  "mid-p-to-100": "Mid-P limits up to 100 observed, Byar's above (the earlier default)",
  "exact-to-14": "Exact limits up to 14 observed, Byar's above (the rule of 2011)",
} as const;
export const limitRule = z.enum(words(limitRules));
/** The rule where a facility has chosen none. */
export const defaultLimits = "mid-p" satisfies keyof typeof limitRules;

/** A month with its statistics: what is shown, and what is signed. */
export const monthReport = z
  .strictObject({
    month,
    facility: z.string(),
    first: day,
    last: day,
    asOf: instantText.describe("The instant up to which the record was read"),
    level: z.number().describe("Of every interval, such as 0.95"),
    limits: limitRule,
    baselines: z.strictObject({ infections: baselineNamed.nullable(), catheterDays: baselineNamed.nullable() }),
    goal: z.number().nullable().describe("The SIR that is aimed at"),
    wards: z.array(wardFigures),
    total: z.strictObject({ figures: z.array(figure), insertions: insertionCounts }),
    completeness: z
      .array(completenessItem)
      .nullable()
      .describe("What was missing or doubtful; null in months that were signed before this was kept"),
    cautions: z.array(z.string()),
    sources: z.array(z.string()),
  })
  .meta({ id: "MonthReport" });
export type MonthReport = z.infer<typeof monthReport>;
