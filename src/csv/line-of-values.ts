import { type Fault, Problem, refuse } from "../../shared/problems.ts";
import type { ReadLine } from "../usecases/imports/intake-item.ts";
import type { Layout, Reading } from "./column.ts";
import { fingerprint } from "./fingerprint.ts";
import { readHeader } from "./header.ts";
import { LineReader } from "./read-line.ts";
import { scanRow } from "./scan-row.ts";
import { layoutNamed } from "./sent-files.ts";
import { startOf } from "./start.ts";

/** A column of a layout with what a line has in it. */
export interface Cell {
  readonly column: string;
  readonly value: string;
  readonly required: boolean;
}

/**
 * Every column of a file's layout with what a line of it has in it, by the header of the file: empty where the file
 * does not have the column, where the line cannot be divided, or where the header is not known. Null for a file that is not read.
 */
export function cellsOf(file: string, text: string, header: string | undefined): Cell[] | null {
  const layout = layoutNamed(file);
  if (layout === undefined) return null;
  const values = header === undefined ? new Map<string, string>() : valuesOf(layout, text, header);
  return Object.entries(layout.columns).map(([column, { isRequired }]) => ({
    ...{ column, value: values.get(column) ?? "", required: isRequired },
  }));
}

function valuesOf(layout: Layout, text: string, header: string): Map<string, string> {
  const { delimiter } = startOf(header, layout);
  const rowOf = (line: string) => scanRow({ text: line, start: 0, line: 1, delimiter, isLast: true })?.row;
  const [names, row] = [rowOf(header), text === "" ? undefined : rowOf(text)];
  const read = names && readHeader(names, layout);
  if (!read || "faults" in read || !row || row.trouble !== null) return new Map();
  return new Map(read.columns.map(({ name, position }) => [name, (row.cells[position - 1] ?? "").trim()]));
}

/**
 * A line made of the values of its columns, read as if a file had it; a column that is left out is empty.
 * Refuses each value that cannot be read at its column, `/values/from`, and columns that the file does not have.
 */
export function lineOfValues(
  given: { file: string; line: number; values: Readonly<Record<string, string>> },
  reading: Reading,
): ReadLine {
  const { file, line, values } = given;
  const layout: Layout =
    layoutNamed(file) ?? refuse("files-unknown", "No file of this name is read.", { pointer: "/file" });
  refuseUnknownColumns(layout, values);
  const columns = Object.entries(layout.columns).map(([name, column], i) => ({ name, column, position: i + 1 }));
  const cells = columns.map(({ name }) => values[name] ?? "");
  const read = new LineReader(layout, columns, reading).read({
    line,
    cells,
    raw: cells.map(quoted).join(","),
    trouble: null,
  });
  if (read.type === "line") return { ...read, fingerprint: fingerprint(read) };
  const [first, ...more] = read.faults.map(
    ({ code, column, detail }): Fault => ({ code, detail, pointer: column === null ? "" : `/values/${column}` }),
  );
  if (!first) throw new Error("a line was refused without a fault");
  throw new Problem(first, ...more);
}

function refuseUnknownColumns({ name, columns }: Layout, values: Readonly<Record<string, string>>): void {
  const known = Object.keys(columns);
  if (Object.keys(values).every((column) => known.includes(column))) return;
  refuse("csv-column-unknown", `The columns of ${name} are: ${known.join(", ")}.`, { pointer: "/values" });
}

/** A cell as a file has it (RFC 4180, section 2). */
function quoted(cell: string): string {
  return /[",\r\n]/.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell;
}
