import type { Layout } from "./column.ts";
import { columnName } from "./column-name.ts";
import { lineBreaksIn } from "./line-breaks.ts";
import { scanRow } from "./scan-row.ts";

/** The comma first: it is the layout's own and wins where nothing speaks for another. */
const delimiters = [",", ";", "\t"];

/** Lines in front of the header that say nothing: blank ones, and those of a spreadsheet's empty cells. */
const blankLines = /^(?:[ \t,;]*(?:\r\n|\n|\r))*/;
/** A line that some spreadsheets write and read in front of the header to name the delimiter (common practice). */
const delimiterLine = /^"?sep=[,;\t]"?[ \t]*(?:\r\n|\n|\r)/i;

/** Where the header of a file begins and how its cells are divided. */
export interface FileStart {
  readonly delimiter: string;
  /** The number of characters in front of the header. */
  readonly skipped: number;
  /** The physical line of the header. */
  readonly line: number;
}

/**
 * The delimiter is the one that makes the most known column names out of the header line.
 * `block` is the beginning of the file; `isLast` when it is all of it.
 */
export function startOf(block: string, layout: Layout): FileStart {
  const named = delimiterLine.exec(block)?.[0] ?? "";
  const blank = blankLines.exec(block.slice(named.length))?.[0] ?? "";
  const skipped = named.length + blank.length;
  const line = 1 + lineBreaksIn(named) + lineBreaksIn(blank);
  const scores = delimiters.map((delimiter) => knownNames({ block, skipped, delimiter, layout }));
  const best = scores.indexOf(Math.max(...scores));
  return { delimiter: delimiters[best] ?? ",", skipped, line };
}

function knownNames(read: { block: string; skipped: number; delimiter: string; layout: Layout }): number {
  const { block, skipped, delimiter, layout } = read;
  if (skipped >= block.length) return 0;
  const scanned = scanRow({ text: block, start: skipped, line: 1, delimiter, isLast: true });
  return scanned?.row.cells.filter((cell) => Object.hasOwn(layout.columns, columnName(cell))).length ?? 0;
}
