import { z } from "zod";
import { day, month } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { sheet } from "../sheet.ts";
import { id, idInPath } from "../wire.ts";

/** A month of the wards that the person may see. */
export const readMonth = endpoint({
  method: "GET",
  path: "/months/{month}",
  summary: "Read a month: patient-days, catheter-days and utilization of each ward",
  permission: "see-counts",
  wards: "facility",
  reply: "json",
  params: { month },
  output: z
    .strictObject({
      month,
      wardIds: z.array(id).describe("The ward of each row, in the order of the rows"),
      sheet,
    })
    .meta({ id: "Month" }),
  errors: ["in-the-future"],
});

/** A month of one ward, by day. */
export const readWardMonth = endpoint({
  method: "GET",
  path: "/wards/{wardId}/months/{month}",
  summary: "Read the ward days of a month",
  permission: "see-counts",
  wards: "ward",
  reply: "json",
  params: { wardId: idInPath, month },
  output: z.strictObject({ month, wardId: id, sheet }).meta({ id: "WardMonth" }),
  errors: ["in-the-future"],
});

/** A month's reviews, indications, confirmations and care checks of the wards that the person may see. */
export const readMonthCare = endpoint({
  method: "GET",
  path: "/months/{month}/care",
  summary: "Read a month's reviews and care of catheters, by ward",
  permission: "see-counts",
  wards: "facility",
  reply: "json",
  params: { month },
  output: z
    .strictObject({ month, wardIds: z.array(id).describe("The ward of each row, in the order of the rows"), sheet })
    .meta({ id: "MonthCare" }),
  errors: ["in-the-future"],
});

/** The rows behind a ward's figures of care. The view is recorded. */
export const readWardCare = endpoint({
  method: "GET",
  path: "/wards/{wardId}/months/{month}/care",
  summary: "Read the catheters and days behind a ward's figures of care; the view is recorded",
  permission: "see-patients",
  wards: "ward",
  reply: "json",
  params: { wardId: idInPath, month },
  output: z
    .strictObject({
      month,
      wardId: id,
      figures: z.array(z.strictObject({ figure: z.string(), rows: z.array(z.strictObject({ catheterId: id, day })) })),
    })
    .meta({ id: "WardCare" }),
  errors: ["in-the-future"],
});
