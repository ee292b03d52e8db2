import { z } from "zod";
import { day, month } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { type GapKind, gapWords } from "../gap-words.ts";
import { sheet } from "../sheet.ts";
import { id, idInPath, instant, version } from "../wire.ts";

const wardInfections = z
  .strictObject({
    wardId: id,
    isWatched: z.boolean(),
    edition: z.string().nullable().describe("By which edition it is watched; null when it is not"),
    cautis: z.int().describe("Catheter-associated events that somebody confirmed, also with a disagreement"),
    waiting: z.int().describe("Positive cultures that wait for confirmation; they are not counted yet"),
    cannotTell: z.int().describe("Cultures that cannot be determined; they are not counted"),
    pending: z.int().describe("Urine cultures that wait for the laboratory, up to three days after the month"),
    closed: z.int().describe("Urine cultures that closed automatically, because they certainly cannot count"),
    determined: z.int().describe("All determined cultures of the month"),
    fewTemperatures: z
      .int()
      .describe("Those of them that rest on temperatures of fewer than half of the days in which a fever would count"),
    hinging: z.int().describe("Those of them of which another reading of an open point gives another answer"),
    open: z.int().describe("All of these, each once: while there are some, the number of CAUTIs is not final"),
    noneFound: z
      .strictObject({ noneFoundId: id, version, at: instant, by: id })
      .nullable()
      .describe("Who confirmed that none were found"),
  })
  .meta({ id: "WardInfections" });

/** A month of the wards that the person may see. */
export const readMonth = endpoint({
  method: "GET",
  path: "/months/{month}",
  summary: "Read a month: patient-days, catheter-days, utilization and infections of each ward",
  permission: "see-counts",
  wards: "facility",
  reply: "sheet",
  heavy: true,
  params: { month },
  output: z
    .strictObject({
      month,
      wardIds: z.array(id).describe("The ward of each row, in the order of the rows"),
      sheet,
      infections: z.array(wardInfections).describe("Of each of these wards, in that order"),
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
  reply: "sheet",
  heavy: true,
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
  reply: "sheet",
  heavy: true,
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
  heavy: true,
  params: { wardId: idInPath, month },
  output: z
    .strictObject({
      month,
      wardId: id,
      figures: z.array(
        z.strictObject({
          figure: z.string(),
          rows: z.array(z.strictObject({ catheterId: id, day, patientId: id, identifier: z.string() })),
        }),
      ),
    })
    .meta({ id: "WardCare" }),
  errors: ["in-the-future"],
});

/** What is missing from a month, or doubtful in it. */
export const readMonthGaps = endpoint({
  method: "GET",
  path: "/months/{month}/gaps",
  summary: "Read what is missing from a month, what is doubtful in it, and what keeps it from being signed",
  permission: "see-counts",
  wards: "facility",
  reply: "json",
  heavy: true,
  params: { month },
  output: z
    .strictObject({
      month,
      gaps: z.array(
        z.strictObject({
          kind: z.enum(Object.keys(gapWords) as GapKind[]),
          wardId: id.nullable().describe("The ward it belongs to; null when it belongs to none alone"),
          count: z.int().min(1),
          blocks: z.boolean().describe("Whether the month cannot be signed as long as this is so"),
          sentence: z.string(),
          remedy: z.string().describe("What mends it"),
          days: z.array(day).describe("The days that it touches; none when it is not a matter of days"),
          lines: z
            .array(
              z.strictObject({
                importId: id,
                file: z.string(),
                line: z.int().min(1).nullable().describe("The physical line; null when the whole file is meant"),
                reason: z.string().nullable().describe("Why it was dropped"),
                by: z.string().nullable().describe("Who dropped it"),
                at: instant.nullable(),
              }),
            )
            .describe("The first lines of imports that it is about, for people who may open them; every dropped line"),
          imports: z.array(id).describe("Imports that are not stored"),
        }),
      ),
    })
    .meta({ id: "MonthGaps" }),
  errors: ["in-the-future"],
});
