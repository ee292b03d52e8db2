import type { Sheet, SheetCell, SheetColumn } from "../../shared/sheet.ts";
import { sheetCsv } from "../csv/sheet-csv.ts";

export const sheetFormats = ["table", "json", "csv"] as const;
export type SheetFormat = (typeof sheetFormats)[number];

/** A sheet as text for the command line. CSV holds the rows alone; a table and JSON also what to know about them. */
export function sheetText(sheet: Sheet, format: SheetFormat): string {
  if (format === "json") return `${JSON.stringify(sheet, null, 2)}\n`;
  return format === "csv" ? sheetCsv(sheet) : tableText(sheet);
}

function tableText(sheet: Sheet): string {
  const rows = [...sheet.rows, ...(sheet.total ? [sheet.total] : [])];
  const texts = [
    sheet.columns.map((c) => c.label),
    ...rows.map((row) => row.map((cell, i) => show(cell, sheet.columns[i]))),
  ];
  const widths = sheet.columns.map((_, i) => Math.max(...texts.map((row) => row[i]?.length ?? 0)));
  const line = (row: readonly string[]) =>
    row
      .map((text, i) => (isNumber(sheet.columns[i]) ? text.padStart(widths[i] ?? 0) : text.padEnd(widths[i] ?? 0)))
      .join("  ")
      .trimEnd();
  const body = texts.map(line);
  const rule = widths.map((width) => "-".repeat(width)).join("  ");
  const [header = "", ...lines] = body;
  const last = sheet.total ? [rule, ...lines.splice(-1)] : [];
  return `${[`${sheet.title}, ${sheet.period}`, "", header, rule, ...lines, ...last, "", ...sheet.cautions].join("\n")}\n`;
}

function isNumber(column: SheetColumn | undefined): boolean {
  return column !== undefined && column.kind !== "text" && column.kind !== "day";
}

function show(cell: SheetCell, column: SheetColumn | undefined): string {
  if (cell === null) return column?.kind === "ratio" ? "-" : "missing";
  if (typeof cell === "string") return cell;
  return column?.kind === "ratio" ? cell.toFixed(2) : String(cell);
}
