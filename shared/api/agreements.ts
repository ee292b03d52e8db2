import { z } from "zod";
import { month } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { id, idInPath } from "../wire.ts";

const verdict = z.enum(["accepted", "not yet", "too few to judge"]);

const monthAgreement = z
  .strictObject({
    month,
    quantity: z.enum(["patient-days", "catheter-days"]),
    daysCompared: z.int().describe("Days of the month that have both counts"),
    daysInMonth: z.int(),
    manual: z.int().describe("Counted by hand: the reference"),
    electronic: z.int(),
    differencePercent: z.number().nullable().describe("Electronic less manual, in percent of manual"),
    tolerance: z.strictObject({ low: z.number(), high: z.number() }).describe("The electronic totals that agree"),
    outcome: z.enum(["agrees", "differs", "too few to judge", "no day with both counts"]),
    sentence: z.string(),
  })
  .meta({ id: "MonthAgreement" });

const quantityAgreement = z
  .strictObject({ verdict, sentence: z.string(), months: z.array(monthAgreement) })
  .meta({ id: "QuantityAgreement" });

/** Whether a ward's electronic counts may replace its manual ones: the three months that end with this one. */
export const readAgreement = endpoint({
  method: "GET",
  path: "/wards/{wardId}/agreement/{month}",
  summary: "Compare the electronic with the manual counts of the three months that end with this one",
  permission: "see-counts",
  wards: "ward",
  reply: "json",
  heavy: true,
  params: { wardId: idInPath, month },
  output: z
    .strictObject({
      wardId: id,
      verdict,
      sentence: z.string(),
      patientDays: quantityAgreement,
      catheterDays: quantityAgreement,
    })
    .meta({ id: "Agreement" }),
  errors: ["in-the-future"],
});
