import { z } from "zod";
import { month } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { reportDocument } from "../report-document.ts";
import { idInPath } from "../wire.ts";

/** A month's figures as a document: as they are now, or as they were signed. */
export const readMonthDocument = endpoint({
  method: "GET",
  path: "/months/{month}/document",
  summary:
    "Take a month's figures along as a document, as they are now or as they were signed; the PDF of a signature is kept",
  permission: "see-counts",
  wards: "facility",
  reply: "document",
  heavy: true,
  params: { month },
  query: {
    signature: idInPath.optional().describe("The number of a signature; left out: the figures as they are now"),
  },
  output: z
    .strictObject({
      document: reportDocument,
      signed: z
        .strictObject({ month, number: z.int() })
        .nullable()
        .describe(
          "The signature whose whole text it was made of: its PDF is made once and kept; null for other figures",
        ),
    })
    .meta({ id: "MonthDocument" }),
  errors: ["in-the-future", "not-found"],
});
