import { z } from "zod";
import { baselineKinds } from "../baseline-words.ts";
import { month } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { limitRule } from "../month-report.ts";
import { remark } from "../records.ts";
import { words } from "../vocabulary.ts";
import { id, instant, lineText, reason } from "../wire.ts";

const baselineKind = z.enum(words(baselineKinds));

/** What a reader must know of a baseline before comparing with it. */
const origin = {
  name: lineText(120),
  source: lineText(500).describe("The publication, with its table"),
  year: lineText(40).describe("The years of the data"),
  definition: lineText(500).describe("The definition of an infection that its counts follow"),
  population: lineText(500).describe("Whose data: country, hospitals, wards"),
  edition: lineText(120),
};

const row = z.record(z.string().max(40), z.string().max(500));

export const listBaselines = endpoint({
  method: "GET",
  path: "/baselines",
  summary: "List the baselines of the facility, with their rows as they were given",
  permission: "see-baselines",
  wards: "none",
  reply: "json",
  output: z
    .strictObject({
      baselines: z.array(
        z.strictObject({
          baselineId: id,
          kind: baselineKind,
          ...origin,
          rows: z.array(row),
          recordedAt: instant,
          recordedBy: id,
        }),
      ),
    })
    .meta({ id: "Baselines" }),
  errors: [],
});

/** A baseline is never changed: a mistake is mended by a new one. */
export const addBaseline = endpoint({
  method: "POST",
  path: "/baselines",
  summary: "Add a baseline, typed row by row or as the text of a CSV file",
  effect: "creates",
  permission: "set-baselines",
  wards: "none",
  reply: "json",
  body: {
    kind: baselineKind,
    ...origin,
    rows: z.array(row).max(2_000).optional().describe("Values as text by the name of their column"),
    csv: z.string().max(500_000).optional().describe("The same as a CSV file with a header; instead of rows"),
  },
  output: z.strictObject({ baselineId: id }).meta({ id: "BaselineAdded" }),
  errors: ["baseline-unusable"],
});

/** What the wards counted in months that are over, as a baseline by ward: later months compare with it. */
export const addOwnBaseline = endpoint({
  method: "POST",
  path: "/baselines/own-periods",
  summary: "Add a baseline of the wards' own counts of months that are over",
  effect: "creates",
  permission: "set-baselines",
  wards: "none",
  reply: "json",
  body: {
    name: origin.name,
    fromMonth: month,
    toMonth: month.describe("The last month; at most 60 are counted together"),
  },
  output: z.strictObject({ baselineId: id }).meta({ id: "OwnBaselineAdded" }),
  errors: ["baseline-unusable", "month-not-over", "period-impossible"],
});

const comparison = {
  fromMonth: month,
  infectionBaselineId: id.nullable().describe("Predicts infections for the SIR; null: none"),
  utilizationBaselineId: id.nullable().describe("Predicts catheter-days for the SUR; null: none"),
  goal: z.number().positive().max(10).nullable().describe("The SIR that is aimed at, for the CAD; null: none"),
  limits: limitRule,
  factors: z
    .array(
      z.strictObject({
        wardId: id.nullable().describe("Null: of every ward of the facility"),
        factor: lineText(120),
        value: z.union([lineText(120), z.number()]),
      }),
    )
    .max(5_000)
    .describe("What the terms of a model ask for, such as the number of beds"),
  reason: remark,
};

export const listComparisons = endpoint({
  method: "GET",
  path: "/comparisons",
  summary: "List with which baselines months are compared, from which month on",
  permission: "see-baselines",
  wards: "facility",
  reply: "json",
  output: z
    .strictObject({
      comparisons: z.array(
        z.strictObject({ number: z.int().min(1), ...comparison, recordedAt: instant, recordedBy: id }),
      ),
    })
    .meta({ id: "Comparisons" }),
  errors: [],
});

/** For a month the version with the highest number counts whose first month is not later. */
export const setComparison = endpoint({
  method: "POST",
  path: "/comparisons",
  summary: "Say with which baselines months are compared from a month on",
  effect: "creates",
  permission: "set-baselines",
  wards: "facility",
  reply: "json",
  body: {
    ...comparison,
    reason,
    replaces: z.int().min(0).describe("The latest number that you saw; 0 when there was none"),
  },
  output: z.strictObject({ number: z.int() }).meta({ id: "ComparisonSet" }),
  errors: ["not-found", "stale-version", "baseline-of-another-kind"],
});
