import { z } from "zod";
import { day, month } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { sheet } from "../sheet.ts";
import { id } from "../wire.ts";

/** The events of a period, one a row. Nobody can be known by it, unless the viewer may see the patients. */
export const readEvents = endpoint({
  method: "GET",
  path: "/events",
  summary: "Read the infections of a period by location of attribution and date of event; the view is recorded",
  permission: "see-counts",
  wards: "facility",
  reply: "sheet",
  heavy: true,
  query: { first: day, last: day.describe("At most 366 days are read at once") },
  output: z
    .strictObject({
      caseIds: z.array(id.nullable()).describe("The case of each row, for who may see the patient"),
      counted: z
        .array(z.string())
        .describe("How many of them months count, and where and why the others are not counted"),
      sheet,
    })
    .meta({ id: "Events" }),
  errors: ["in-the-future", "end-before-start", "period-too-long"],
});

/** A month's urine cultures by ward: how many came from catheters, and of how many nobody recorded any sign. */
export const readMonthCultures = endpoint({
  method: "GET",
  path: "/months/{month}/cultures",
  summary: "Read a month's urine cultures, and those of catheters without any recorded sign, by ward",
  permission: "see-counts",
  wards: "facility",
  reply: "sheet",
  heavy: true,
  params: { month },
  output: z
    .strictObject({ month, wardIds: z.array(id).describe("The ward of each row, in the order of the rows"), sheet })
    .meta({ id: "MonthCultures" }),
  errors: ["in-the-future"],
});
