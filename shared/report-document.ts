import { z } from "zod";
import { chartInput } from "./chart-input.ts";
import { sheet } from "./sheet.ts";

/** The media types under which a document can be asked for, beside JSON, with the ending of its file. */
export const documentTypes = {
  "application/pdf": "pdf",
  "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet": "xlsx",
  "text/csv": "csv",
} as const;
export type DocumentType = keyof typeof documentTypes;

/** A report to be taken along: the same figures whatever it is made into. */
export const reportDocument = z
  .strictObject({
    title: z.string(),
    cover: z
      .array(z.strictObject({ label: z.string(), text: z.string() }))
      .describe("Period, data-as-of, edition, baseline, who signed"),
    sheets: z.array(sheet).min(1).describe("The first one is what a CSV file holds"),
    charts: z.array(chartInput),
    cautions: z.array(z.string()),
    sources: z.array(z.string()),
  })
  .meta({ id: "ReportDocument" });
export type ReportDocument = z.infer<typeof reportDocument>;
