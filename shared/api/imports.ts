import { z } from "zod";
import { month } from "../day.ts";
import { endpoint } from "../endpoint.ts";
import { importMost, importState } from "../import-words.ts";
import { id, idInPath, instant, lineText } from "../wire.ts";

const permission = "import-records";
const reply = "json";
const params = { importId: idInPath };
const count = z.int().min(0);

const counts = {
  waiting: count.describe("Lines that wait to be stored"),
  accepted: count,
  marked: count.describe("Stored, with something doubtful about them"),
  unchanged: count.describe("Seen before: they change nothing"),
  refused: count.describe("Refused; of a stored import, set aside for repair"),
  dropped: count.describe("Set aside, and dropped by a person"),
  blank: count.describe("Rows without anything in them"),
};

const summary = {
  importId: id,
  state: importState,
  startedAt: instant,
  startedByName: z.string(),
  sourceName: z.string().nullable().describe("Null for imports from before sources were recorded"),
  finishedAt: instant.nullable(),
  counts: z.strictObject(counts),
};

/** Files come as text in JSON. They are read after the answer: the import tells how far that is. */
export const receiveImport = endpoint({
  method: "POST",
  path: "/imports",
  summary: "Send CSV files to be read and tried; nothing is stored until somebody decides",
  effect: "creates",
  permission,
  wards: "none",
  reply,
  bodyBytes: importMost.bytes,
  body: {
    sourceId: id.optional().describe("The source that the files come from; the facility's own when left out"),
    files: z
      .array(z.strictObject({ name: lineText(200), text: z.string() }))
      .min(1, "send at least one file")
      .max(importMost.files, `send at most ${importMost.files} files`)
      .describe(`At most ${importMost.lines} lines in all; the whole request at most ${importMost.bytes} bytes`),
  },
  output: z.strictObject({ importId: id }).meta({ id: "ImportReceived" }),
  errors: ["demo-record", "files-unknown", "import-too-large", "source-unknown"],
});

/** Imports, also those of the command line. */
export const listImports = endpoint({
  method: "GET",
  path: "/imports",
  summary: "List imports, newest first",
  permission,
  wards: "none",
  reply,
  query: { before: idInPath.optional().describe("Only imports with a smaller number: the next of the page before") },
  output: z.strictObject({ imports: z.array(z.strictObject(summary)), next: id.nullable() }).meta({ id: "Imports" }),
  errors: [],
});

const effect = z.strictObject({ added: count, changed: count });

/** Where an import stands. Asked again and again, it tells the progress; it holds nothing of a patient. */
export const readImport = endpoint({
  method: "GET",
  path: "/imports/{importId}",
  summary: "Read where an import stands, and what storing it would change",
  permission,
  wards: "import",
  reply,
  params,
  output: z
    .strictObject({
      ...summary,
      setAside: z.boolean(),
      progress: z
        .strictObject({ done: count, total: count.nullable().describe("Null while the files are read") })
        .nullable()
        .describe("Lines done in the step under way; null when none is"),
      broken: z.boolean().describe("A file cannot be read to its end, so nothing can be stored"),
      files: z.array(z.strictObject({ file: z.string(), counts: z.strictObject(counts) })),
      notices: z.array(z.strictObject({ file: z.string().nullable(), detail: z.string() })),
      effects: z
        .strictObject({
          ...{ wards: effect, stays: effect, moves: effect, catheters: effect },
          ...{ reviews: effect, specimens: effect, signs: effect },
        })
        .nullable()
        .describe("Entries that storing the lines would make and change; null before all were tried"),
      signedMonths: z
        .array(month)
        .describe("Signed months of which lines change or add entries, while the import waits for a decision"),
      wardQuestions: z
        .array(
          z.strictObject({ code: z.string(), near: z.array(z.strictObject({ code: z.string(), name: z.string() })) }),
        )
        .describe("Codes that no ward has, each with the wards that it may mean; the decision answers them"),
    })
    .meta({ id: "Import" }),
  errors: [],
});

/** A person decides, once. */
export const decideImport = endpoint({
  method: "POST",
  path: "/imports/{importId}/decision",
  summary: "Store what an import holds, or discard it",
  effect: "creates",
  permission,
  wards: "import",
  reply,
  params,
  body: {
    decision: z.enum(["apply", "discard"]),
    setAside: z.boolean().describe("Store what can be stored and keep refused lines for repair; else they stop it"),
    wards: z
      .array(
        z.strictObject({
          code: lineText(100).describe("A code about which is asked"),
          sameAs: lineText(100).nullable().describe("The code of the ward that it means; null for a new ward"),
        }),
      )
      .max(1000)
      .optional()
      .describe("An answer for each question; the next import of the source needs none"),
  },
  output: z.strictObject({ importId: id, state: importState }).meta({ id: "ImportDecided" }),
  errors: [
    ...(["import-not-waiting", "import-lines-refused", "import-file-broken", "ward-unclear"] as const),
    ...(["alias-of-itself", "alias-taken", "alias-code-is-ward", "alias-ward-unknown"] as const),
  ],
});
