import { type Fault, Problem, refuse } from "../../shared/problems.ts";
import { columnName } from "./column-name.ts";
import { type Row, scanRow } from "./scan-row.ts";

const delimiters = [",", ";", "\t"];

/**
 * A small CSV text as rows of values by the name of their column. Columns may stand in any order and be left out; blank
 * lines are skipped. `code` is what every fault is refused with: a column that is not known or stands twice, a row with
 * more cells than columns, a quote out of place; each fault names its physical line.
 */
export function textRows(
  text: string,
  columns: readonly string[],
  code: "baseline-unusable",
): Record<string, string>[] {
  const plain = text.replace(/^\uFEFF/, "");
  const known = (delimiter: string) =>
    splitRows(plain, delimiter)[0]?.cells.filter((cell) => columns.includes(columnName(cell))).length ?? 0;
  const delimiter = delimiters.toSorted((a, b) => known(b) - known(a))[0] ?? ",";
  const [header, ...rows] = splitRows(plain, delimiter).filter(({ raw }) => raw.trim() !== "");
  if (!header) return refuse(code, "The file is empty.", { pointer: "/csv" });
  const names = header.cells.map(columnName);
  const faults: Fault[] = [];
  const blame = (line: number, detail: string) =>
    faults.push({ code, pointer: "/csv", detail: `Line ${line}: ${detail}` });
  for (const [at, name] of names.entries()) {
    if (!columns.includes(name))
      blame(header.line, `the column ${at + 1} is not known; known are ${columns.join(", ")}.`);
    else if (names.indexOf(name) !== at) blame(header.line, `the column ${name} is there twice.`);
  }
  for (const { line, cells, trouble } of rows) {
    if (trouble) blame(trouble.line, trouble.detail);
    else if (cells.length > names.length) blame(line, `there are ${cells.length} cells for ${names.length} columns.`);
  }
  const [first, ...more] = faults;
  if (first) throw new Problem(first, ...more);
  return rows.map(({ cells }) => Object.fromEntries(names.map((name, at) => [name, cells[at] ?? ""])));
}

function splitRows(text: string, delimiter: string): Row[] {
  const rows: Row[] = [];
  for (let [start, line] = [0, 1]; start < text.length; ) {
    const scanned = scanRow({ text, start, line, delimiter, isLast: true });
    if (!scanned) break;
    rows.push(scanned.row);
    [start, line] = [scanned.next, scanned.nextLine];
  }
  return rows;
}
