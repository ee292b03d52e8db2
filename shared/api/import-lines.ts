import { z } from "zod";
import { endpoint } from "../endpoint.ts";
import { lineKinds } from "../import-words.ts";
import type { ProblemCode } from "../problems.ts";
import { id, idInPath, lineText, reason } from "../wire.ts";

const permission = "import-records";
const reply = "json";
const params = { importId: idInPath };
const count = z.int().min(0);

/** Lines with what is wrong with them. They speak of patients, so the view is recorded. */
export const readImportLines = endpoint({
  method: "GET",
  path: "/imports/{importId}/lines",
  summary: "Read lines of an import with their faults or marks; the view is recorded",
  permission,
  wards: "import",
  reply,
  params,
  query: {
    kind: z.enum(lineKinds),
    after: z
      .string()
      .regex(/^[a-z-]{1,40}\.csv:\d{1,9}$/, "send the next of the page before")
      .optional()
      .describe("Where the page before ended"),
  },
  output: z
    .strictObject({
      lines: z.array(
        z.strictObject({
          file: z.string(),
          line: count.nullable().describe("The physical line; null when the whole file is meant"),
          text: z.string().nullable().describe("The line as it stands in the file; null when it is kept no more"),
          cells: z
            .array(z.strictObject({ column: z.string(), value: z.string(), required: z.boolean() }))
            .nullable()
            .describe("Every column of the layout with what the line has in it; null where it cannot be repaired"),
          faults: z.array(
            z.strictObject({
              code: z.string(),
              line: count.nullable().describe("Where in the file it lies, when that is not the beginning of the line"),
              column: z.string().nullable(),
              detail: z.string(),
              remedy: z.string(),
              other: z.string().nullable().describe("The line or entry that stands in the way"),
            }),
          ),
          marks: z.array(z.string()).describe("What is doubtful, in words"),
          reason: z.string().nullable().describe("Why it was dropped"),
        }),
      ),
      next: z.string().nullable(),
    })
    .meta({ id: "ImportLines" }),
  errors: [],
});

const place = { file: lineText(40), line: z.int().min(1).max(999_999_999) };

/** What a line of a file can be refused for. */
const lineErrors = [
  ...["csv-cell-empty", "csv-cell-too-long", "csv-character", "csv-identifier-damaged", "csv-date-ambiguous"],
  ...["csv-date-serial", "csv-number", "csv-word", "csv-not-utf8", "csv-column-unknown", "files-unknown"],
  ...["day-unreadable", "time-unreadable", "time-does-not-exist", "in-the-future", "stay-unknown", "stay-refused"],
  ...["stay-of-another-patient", "stay-overlaps", "stay-number-taken", "move-overlaps", "outside-stay"],
  ...["end-before-start", "not-on-a-ward", "already-discharged", "first-ward-stay", "catheter-unknown"],
  ...["catheter-unclear", "insertion-unknown", "arrival-contradicts", "removal-before-insertion", "removal-unclear"],
  ...["seen-after-removal", "seen-before-insertion", "already-removed", "not-in-place", "written-too-early"],
  ...["indication-missing", "indication-unknown", "out-of-bounds", "count-impossible", "line-contradicts"],
  ...["ward-in-use", "entry-voided"],
] as const satisfies readonly ProblemCode[];

/** A line that was set aside, as it should have been. It is checked like any other, and stored or refused. */
export const repairImportLine = endpoint({
  method: "POST",
  path: "/imports/{importId}/repairs",
  summary: "Repair a line that was set aside, and store it",
  effect: "creates",
  permission,
  wards: "import",
  reply,
  params,
  body: {
    ...place,
    values: z.record(z.string().max(40), z.string().max(1000)).describe("What each column of the line should say"),
  },
  output: z
    .strictObject({ state: z.enum(["accepted", "marked", "unchanged"]), marks: z.array(z.string()) })
    .meta({ id: "ImportLineRepaired" }),
  errors: ["line-not-set-aside", "ward-unclear", ...lineErrors],
});

/** A line that was set aside and should not be stored. It stays to be read, with the reason. */
export const dropImportLine = endpoint({
  method: "POST",
  path: "/imports/{importId}/drops",
  summary: "Drop a line that was set aside, with the reason",
  effect: "creates",
  permission,
  wards: "import",
  reply,
  params,
  body: { ...place, reason },
  output: z
    .strictObject({ importId: id, refused: count.describe("Lines still set aside") })
    .meta({ id: "ImportLineDropped" }),
  errors: ["line-not-set-aside"],
});
