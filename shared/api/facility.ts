import { z } from "zod";
import { censusTime, day } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { id, instantText, reason } from "../wire.ts";

/** The facility in which the person acts. */
export const readFacility = endpoint({
  method: "GET",
  path: "/facility",
  summary: "Read the facility, its census times and its clock",
  permission: "see-facility",
  wards: "none",
  reply: "json",
  output: z
    .strictObject({
      facilityId: id,
      name: z.string(),
      demo: z.boolean().describe("The fictional hospital: nobody in it exists"),
      zone: z.string().describe("IANA time zone name"),
      census: z
        .array(z.strictObject({ fromDay: day, time: censusTime }))
        .describe("Daily census times, each from a day on; the first day of the list stands for all days before"),
      now: instantText.describe("The server's clock"),
      today: day.describe("The facility day that it is now"),
    })
    .meta({ id: "Facility" }),
  errors: [],
});

/** Another time of the daily census, from the first day of a month that has not begun. */
export const setCensus = endpoint({
  method: "POST",
  path: "/facility/census",
  summary: "Set the time of the daily census from a month on",
  effect: "creates",
  permission: "set-facility",
  wards: "none",
  reply: "json",
  body: {
    fromDay: day.describe("The first day of a month that has not begun; before the first admission any day"),
    time: censusTime,
    reason,
  },
  output: z.strictObject({ facilityId: id }).meta({ id: "CensusSet" }),
  errors: ["census-change-too-early"],
});
