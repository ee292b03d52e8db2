import { z } from "zod";
import { day } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { id, idInPath } from "../wire.ts";
import { determination } from "./determination-entries.ts";

/** What the editions in force say of a patient's urine cultures, with every step. The view is recorded. */
export const readDeterminations = endpoint({
  method: "GET",
  path: "/patients/{patientId}/determinations",
  summary: "Determine a patient's urine cultures by the published definitions; the view is recorded",
  permission: "see-patients",
  wards: "patient",
  reply: "json",
  params: { patientId: idInPath },
  query: {
    family: z.enum(["us", "ecdc"]).default("us").describe("Whose definitions: of each culture, the edition in force"),
  },
  output: z
    .strictObject({
      patientId: id.describe("The surviving record"),
      caution: z.string(),
      knownThrough: day.describe("The day up to which the record was read"),
      determinations: z.array(determination).describe("In the order of days"),
    })
    .meta({ id: "Determinations" }),
  errors: [],
});
