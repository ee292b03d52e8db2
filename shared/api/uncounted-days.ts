import { z } from "zod";
import { day, month } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { id } from "../wire.ts";

/** The patients behind the patient-days that may be missing from a month. The view is recorded. */
export const readUncountedDays = endpoint({
  method: "GET",
  path: "/months/{month}/uncounted-days",
  summary: "Read the patients whose patient-days may be missing from a month; the view is recorded",
  permission: "see-patients",
  wards: "facility",
  reply: "json",
  heavy: true,
  params: { month },
  output: z
    .strictObject({
      month,
      days: z.array(
        z.strictObject({
          kind: z
            .enum(["no-ward", "outpatient"])
            .describe("No unit at the census, or an area that no person confirmed"),
          day,
          wardId: id.nullable().describe("The ward to which the day may belong; null where no ward is recorded"),
          patientId: id,
          identifier: z.string(),
        }),
      ),
    })
    .meta({ id: "UncountedDays" }),
  errors: ["in-the-future"],
});
