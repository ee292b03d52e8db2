import { z } from "zod";
import { month } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { reportDocument } from "../report-document.ts";
import { idInPath } from "../wire.ts";

/** A month's figures as a document: as they are now, or as they were signed. */
export const readMonthDocument = endpoint({
  method: "GET",
  path: "/months/{month}/document",
  summary: "Take a month's figures along as a document, as they are now or as they were signed",
  permission: "see-counts",
  wards: "facility",
  reply: "document",
  params: { month },
  query: {
    signature: idInPath.optional().describe("The number of a signature; left out: the figures as they are now"),
  },
  output: z.strictObject({ document: reportDocument }).meta({ id: "MonthDocument" }),
  errors: ["in-the-future", "not-found"],
});
