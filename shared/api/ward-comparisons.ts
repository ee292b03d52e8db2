import { z } from "zod";
import { chartInput } from "../chart-input.ts";
import { month } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { reportDocument } from "../report-document.ts";
import { id, instantText } from "../wire.ts";

const code = z.string().min(1).max(40, "write the code of a ward");
const wardType = z.string().min(1).max(100, "write the type of a ward");

const figure = z
  .strictObject({
    value: z.number().nullable().describe("Null is missing, never zero"),
    lower: z.number().nullable(),
    upper: z.number().nullable(),
    reason: z.string().nullable().describe("Why a figure or a limit is missing"),
  })
  .meta({ id: "ComparedFigure" });

const comparedWard = z
  .strictObject({
    wardId: id.nullable().describe("The ward, where the person may open its figures to ward days; otherwise null"),
    code: z.string(),
    name: z.string(),
    type: z.string().nullable(),
    patientDays: z.int().nullable(),
    catheterDays: z.int().nullable(),
    watchedDays: z.int().nullable().describe("Catheter-days of the months in which the ward was watched"),
    infections: z.int().nullable().describe("CAUTIs in the watched months; null where no month was watched"),
    open: z.int().describe("Cultures that could still become one: while there are some, the rate is not final"),
    rate: figure.describe("CAUTIs per 1,000 catheter-days of the watched months"),
    utilization: figure.describe("Catheter-days per patient-day"),
    note: z.string(),
  })
  .meta({ id: "ComparedWard" });

const compared = {
  from: month.optional().describe("The first month; left out, eleven months before the last one"),
  to: month.optional().describe("The last month; left out, the last one whose first census has been taken"),
  type: wardType.optional().describe("Only wards of this type; left out, every inpatient ward"),
  ward: code.optional().describe("The ward whose months and infections are drawn one by one"),
};
const comparisonErrors = ["in-the-future", "period-impossible", "ward-unknown", "ward-type-unknown"] as const;

/** Wards of like type over a period, with the charts that tell chance from difference. No patient is in it. */
export const compareWards = endpoint({
  method: "GET",
  path: "/ward-comparison",
  summary: "Compare wards of like type over a period of months",
  permission: "compare-wards",
  wards: "facility",
  reply: "json",
  heavy: true,
  query: compared,
  output: z
    .strictObject({
      from: month,
      to: month,
      type: z.string().nullable(),
      ward: z.string().nullable(),
      asOf: instantText,
      types: z.array(z.strictObject({ type: z.string(), wards: z.int().min(1) })).describe("What can be chosen"),
      wards: z.array(comparedWard).describe("By code, never by rate"),
      charts: z.array(chartInput),
      cautions: z.array(z.string()),
      sources: z.array(z.string()),
    })
    .meta({ id: "WardComparison" }),
  errors: comparisonErrors,
});

/** The same as a document, to be printed and taken along. */
export const readComparisonDocument = endpoint({
  method: "GET",
  path: "/ward-comparison/document",
  summary: "Take a comparison of wards along as a document",
  permission: "compare-wards",
  wards: "facility",
  reply: "document",
  heavy: true,
  query: compared,
  output: z.strictObject({ document: reportDocument }).meta({ id: "WardComparisonDocument" }),
  errors: comparisonErrors,
});

const side = z.strictObject({
  code: z.string(),
  from: month,
  to: month,
  infections: z.int().nullable(),
  open: z.int().describe("Cultures that could still become one of them"),
  catheterDays: z.int().nullable(),
  patientDays: z.int().nullable(),
  predicted: z.number().nullable(),
});

/** Two wards, or two periods of one, tested against each other. */
export const compareTwo = endpoint({
  method: "GET",
  path: "/ward-comparison/two",
  summary: "Test two wards or two periods against each other: rates, SIRs and utilization ratios",
  permission: "compare-wards",
  wards: "facility",
  reply: "json",
  heavy: true,
  query: {
    first: code,
    firstFrom: month,
    firstTo: month,
    second: code,
    secondFrom: month,
    secondTo: month,
  },
  output: z
    .strictObject({
      first: side,
      second: side,
      tests: z.array(
        z.strictObject({
          what: z.enum(["rate", "sir", "utilization"]),
          first: z.number().nullable(),
          second: z.number().nullable(),
          ratio: figure.describe("First / second"),
          p: z.number().nullable().describe("Two-sided; null where there is none"),
          method: z.string(),
          sentence: z.string(),
        }),
      ),
      cautions: z.array(z.string()),
    })
    .meta({ id: "ComparisonOfTwo" }),
  errors: ["in-the-future", "period-impossible", "ward-unknown"],
});
