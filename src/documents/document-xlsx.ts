import writeExcelFile, { type Cell, type Sheet as FileSheet } from "write-excel-file/node";
import type { ReportDocument } from "../../shared/report-document.ts";
import { markOf, type Sheet, type SheetCell, type SheetColumn } from "../../shared/sheet.ts";

/** How a figure is shown; the cell holds it unrounded. */
const formats: Readonly<Record<SheetColumn["kind"], string | undefined>> = {
  text: undefined,
  day: "yyyy-mm-dd",
  whole: "#,##0",
  ratio: "0.000",
  rate: "0.00",
  amount: "0.###",
};

/** Longest name of a sheet, and characters that it must not have; both are rules of the file format. */
const longestName = 31;
const forbidden = /[[\]:*?/\\]/g;

/** A workbook: a cover, a sheet with typed cells and a frozen head for each table, and one of cautions and sources. */
export async function documentXlsx(document: ReportDocument): Promise<Uint8Array> {
  const names = new Set<string>();
  const cover = document.cover.map(({ label, text }): Cell[] => [bold(label), text]);
  const sheets = [
    textSheet(nameFor("Cover", names), [[bold(document.title)], [], ...cover]),
    ...document.sheets.map((sheet) => tableSheet(sheet, nameFor(sheet.title, names))),
    textSheet(nameFor("Cautions and sources", names), [
      [bold("Cautions")],
      ...document.cautions.map((sentence): Cell[] => [sentence]),
      [],
      [bold("Sources")],
      ...document.sources.map((source): Cell[] => [source]),
    ]),
  ];
  return new Uint8Array(await writeExcelFile(sheets).toBuffer());
}

function bold(value: string): Cell {
  return { value, type: String, fontWeight: "bold" };
}

function textSheet(sheet: string, data: Cell[][]): FileSheet<Buffer> {
  return { sheet, data, columns: [{ width: 34 }, { width: 90 }], showGridLines: false };
}

function tableSheet(sheet: Sheet, name: string): FileSheet<Buffer> {
  const { columns, rows, total } = sheet;
  const heads = columns.map(({ label, unit }) => ({
    ...{ value: unit === null ? label : `${label} (${unit})`, type: String, fontWeight: "bold" as const, wrap: true },
  }));
  const line = (row: readonly SheetCell[], number: number | null) =>
    columns.map((column, at) => cellOf(row[at] ?? null, column, markOf(sheet, number, column.key)));
  return {
    ...{ sheet: name, stickyRowsCount: 1, orientation: "landscape" as const },
    columns: columns.map(({ kind }) => ({ width: kind === "text" ? 28 : 14 })),
    data: [heads, ...rows.map(line), ...(total === null ? [] : [line(total, null)])],
  };
}

/**
 * A figure is a number, a day a date and words are words, whatever they begin with; what is missing is empty. Words that
 * belong to a figure are part of how it is shown, so that it stays a number.
 */
function cellOf(cell: SheetCell, { kind }: SheetColumn, mark?: string): Cell {
  if (cell === null || cell === "") return null;
  if (typeof cell === "number" && mark !== undefined)
    return { value: cell, type: Number, format: `${formats[kind] ?? "General"}" (${mark.replaceAll('"', "'")})"` };
  if (typeof cell === "number") return { value: cell, type: Number, ...formatOf(kind) };
  if (kind === "day") return { value: new Date(cell), type: Date, ...formatOf(kind) };
  return { value: cell, type: String };
}

function formatOf(kind: SheetColumn["kind"]): { format?: string } {
  const format = formats[kind];
  return format === undefined ? {} : { format };
}

function nameFor(title: string, taken: Set<string>): string {
  const plain = title.replace(forbidden, " ").slice(0, longestName).trim();
  let name = plain;
  for (let number = 2; taken.has(name.toLowerCase()); number++) {
    name = `${plain.slice(0, longestName - 3)} ${number}`;
  }
  taken.add(name.toLowerCase());
  return name;
}
