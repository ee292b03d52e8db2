import { z } from "zod";

/** Under which a sheet is asked for, and answered, as rows of a file. */
export const csvMediaType = "text/csv";

/** What a column holds, so that a table, a chart and a file each show it rightly. */
const columnKind = z.enum(["text", "day", "whole", "ratio", "rate", "amount"]);

export const sheetColumn = z
  .strictObject({
    key: z.string().describe("Name of the column in files"),
    label: z.string().describe("Heading for people"),
    kind: columnKind,
    unit: z.string().nullable().describe("What one is one of; null for words"),
  })
  .meta({ id: "SheetColumn" });
export type SheetColumn = z.infer<typeof sheetColumn>;

/** Null is missing, never zero. */
export const sheetCell = z.union([z.string(), z.number(), z.null()]);
export type SheetCell = z.infer<typeof sheetCell>;

/** Words that are printed with one cell. `row` null: the total. Files of rows have them in a column of their own. */
export const sheetMark = z
  .strictObject({ row: z.int().nullable(), column: z.string().describe("Its key"), text: z.string() })
  .meta({ id: "SheetMark" });
export type SheetMark = z.infer<typeof sheetMark>;

/** The one shape of every report: a page, a file and the API print it alike. */
export const sheet = z
  .strictObject({
    id: z.string(),
    title: z.string(),
    period: z.string().describe("The days that are covered"),
    asOf: z.string().describe("The instant up to which the record was read, in UTC"),
    sources: z.array(z.string()).describe("The published rules that the figures follow"),
    columns: z.array(sheetColumn),
    rows: z.array(z.array(sheetCell)),
    total: z.array(sheetCell).nullable(),
    marks: z.array(sheetMark).optional().describe("What must be read with single cells, such as: not final, 2 open"),
    cautions: z.array(z.string()).describe("What a reader must know before using the figures"),
  })
  .meta({ id: "Sheet" });
export type Sheet = z.infer<typeof sheet>;

/** What is printed with a cell, or undefined. */
export function markOf({ marks = [] }: Pick<Sheet, "marks">, row: number | null, column: string): string | undefined {
  return marks.find((mark) => mark.row === row && mark.column === column)?.text;
}
