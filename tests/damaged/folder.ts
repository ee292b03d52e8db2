import type { Files } from "../usecases/imports/files.ts";

/** The files of a folder with their columns, in the order in which they are read. */
export const columns = {
  "wards.csv": ["ward", "name", "type", "setting", "beds", "opened"],
  "stays.csv": ["stay", "patient", "birth_date", "sex", "admitted", "discharged", "disposition"],
  "moves.csv": ["stay", "patient", "ward", "bed", "from", "to", "absence"],
  "catheters.csv": ["stay", "catheter", "kind", "inserted", "removed", "indication"],
  "reviews.csv": ["stay", "catheter", "day", "outcome", "indication"],
  "specimens.csv": ["stay", "specimen", "kind", "collected", "status", "organism", "count"],
  "signs.csv": ["stay", "day", "time", "sign", "present", "value"],
  "daily-counts.csv": ["ward", "day", "patients", "catheters"],
} as const;
export type FileName = keyof typeof columns;
const fileNames = Object.keys(columns) as FileName[];

/** A line of a file: what is in its cells, each by its column. */
export interface Row {
  readonly file: FileName;
  readonly cells: Readonly<Record<string, string>>;
}

/** A folder: the lines of all files, each in the order of its file. */
export type Folder = readonly Row[];

/** What a cell holds; empty when the file has no such column. */
export function cell({ cells }: Row, column: string): string {
  return cells[column] ?? "";
}

/** The lines of one file. */
export function rowsOf(folder: Folder, file: FileName): Row[] {
  return folder.filter((row) => row.file === file);
}

/** The physical line of each row in its file: the header is line 1. */
export function lineNumbers(folder: Folder): Map<Row, number> {
  return new Map(fileNames.flatMap((file) => rowsOf(folder, file).map((row, i): [Row, number] => [row, i + 2])));
}

/** The folder as text, as an import takes it. */
export function asFiles(folder: Folder): Files {
  return Object.fromEntries(
    fileNames.map((file) => {
      const rows = rowsOf(folder, file).map((row) => columns[file].map((column) => cell(row, column)).join(","));
      return [file, [columns[file].join(","), ...rows]];
    }),
  );
}

const minuteMs = 60_000;

/** Minutes since 1970 of a time as the files write it, such as `2026-03-01T10:00`, in UTC. Not a number: unreadable. */
export function minutesOf(text: string): number {
  return /^\d{4}-\d\d-\d\dT\d\d:\d\d$/.test(text) ? Date.parse(`${text}Z`) / minuteMs : Number.NaN;
}

/** The same the other way. */
export function timeText(minutes: number): string {
  return new Date(minutes * minuteMs).toISOString().slice(0, 16);
}

/** Minutes of a day. */
export const dayMinutes = 24 * 60;
