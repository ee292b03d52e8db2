import { z } from "zod";
import { day } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { id, idInPath } from "../wire.ts";

/** The patients behind one ward day. That they were seen is written to the audit trail. */
export const readWardDay = endpoint({
  method: "GET",
  path: "/wards/{wardId}/days/{day}",
  summary: "Read the patients behind a ward day; the view is recorded",
  permission: "see-patients",
  wards: "ward",
  reply: "json",
  params: { wardId: idInPath, day },
  output: z
    .strictObject({
      wardId: id,
      day,
      patients: z
        .array(
          z.strictObject({
            patientId: id,
            identifier: z.string().describe("The patient's number in the hospital"),
            stayId: id,
            catheter: z.boolean().describe("An indwelling urethral catheter was in place at the census"),
          }),
        )
        .describe("By identifier; each is one patient-day"),
    })
    .meta({ id: "WardDay" }),
  errors: ["in-the-future"],
});
