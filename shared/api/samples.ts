import { z } from "zod";
import { day, month } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { id, idInPath } from "../wire.ts";

/** Monday to Friday: the weekly count is never on a weekend. */
const weekdays = ["monday", "tuesday", "wednesday", "thursday", "friday"] as const;

/** A month's catheter-days estimated from one manual count a week. */
export const readSample = endpoint({
  method: "GET",
  path: "/wards/{wardId}/sample/{month}",
  summary: "Estimate a month's catheter-days from one manual count a week, and tell whether the ward may do so",
  permission: "see-counts",
  wards: "ward",
  reply: "json",
  heavy: true,
  params: { wardId: idInPath, month },
  query: {
    weekday: z.enum(weekdays),
    kind: z
      .enum(["general", "specialty-or-oncology", "neonatal"])
      .describe("What the surveillance protocol calls the ward"),
  },
  output: z
    .strictObject({
      wardId: id,
      month,
      verdict: z.enum(["may sample", "must count daily", "cannot tell"]),
      sentence: z.string(),
      conditions: z.array(
        z.strictObject({
          condition: z.string(),
          outcome: z.enum(["held", "failed", "cannot tell"]),
          sentence: z.string(),
        }),
      ),
      weeks: z.array(
        z.strictObject({ planned: day, used: day.nullable().describe("Null: nothing was counted that week") }),
      ),
      sampledPatientDays: z.int(),
      sampledCatheterDays: z.int(),
      sampledUtilization: z.number().nullable(),
      monthPatientDays: z.int().describe("From the record, day by day"),
      estimatedCatheterDays: z.number().nullable().describe("Not rounded: the source states no rounding"),
    })
    .meta({ id: "WeeklySample" }),
  errors: ["in-the-future"],
});
