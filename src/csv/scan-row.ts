import type { ProblemCode } from "../../shared/problems.ts";
import { findLineEnd, lineBreaksIn } from "./line-breaks.ts";
import { scanQuoted } from "./scan-quoted.ts";

/** No row of any layout is nearly as long; a longer one means that the line ends are missing or the file is another. */
export const rowCharactersMost = 20_000;

const lineFeed = 10;
const carriageReturn = 13;
const space = 32;
const tab = 9;
const doubleQuote = 34;

/** What keeps a row from being split into cells. */
export interface RowTrouble {
  readonly code: ProblemCode;
  readonly detail: string;
  /** The physical line in which it lies, and the number of the cell, from 1. */
  readonly line: number;
  readonly cell: number;
}

/** A row of a file, split into its cells. */
export interface Row {
  /** The physical line in which it begins, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
  /** The row as it stands in the file, without the line end. */
  readonly raw: string;
  readonly trouble: RowTrouble | null;
}

/** Where to read a row from. */
export interface RowPlace {
  readonly text: string;
  /** Where in the text the row begins; there must be a character. */
  readonly start: number;
  /** The physical line in which it begins. */
  readonly line: number;
  readonly delimiter: string;
  /** True when no text follows this text. */
  readonly isLast: boolean;
}

/** A row with what follows it: the place and the physical line of the next one. */
export interface ScannedRow {
  readonly row: Row;
  readonly next: number;
  readonly nextLine: number;
}

/**
 * Reads one row: RFC 4180, and besides line ends of all three kinds, and white space around a quoted cell. Null when
 * the text ends before the row does and more text may follow. Where a double quote is out of place, the row ends with
 * the physical line in which the trouble began, so that the lines behind it are read for themselves.
 */
export function scanRow(place: RowPlace): ScannedRow | null {
  const { text, start, isLast } = place;
  const delimiter = place.delimiter.charCodeAt(0);
  const cells: string[] = [];
  let line = place.line;
  let at = start;
  for (;;) {
    const cellStart = skipBlanks(text, at, delimiter);
    let end: number;
    if (text.charCodeAt(cellStart) === doubleQuote) {
      const quoted = scanQuoted({ text, start: cellStart, delimiter, isLast });
      if (quoted === null) return null;
      if ("code" in quoted) return endWithLine(place, cellStart, { ...quoted, line, cell: cells.length + 1 });
      cells.push(quoted.value);
      line += lineBreaksIn(quoted.value);
      end = quoted.end;
    } else {
      end = endOfPlain(text, cellStart, delimiter);
      if (text.charCodeAt(end) === doubleQuote) {
        return endWithLine(place, end, { ...strayQuote, line, cell: cells.length + 1 });
      }
      cells.push(text.slice(at, end));
    }
    if (text.charCodeAt(end) === delimiter) at = end + 1;
    else return endRow({ place, cells, end, line });
  }
}

const strayQuote = {
  code: "csv-quote",
  detail: "A double quote is inside a cell that does not begin with one.",
} as const;

/** Where the white space before a cell ends. */
function skipBlanks(text: string, start: number, delimiter: number): number {
  let at = start;
  for (;;) {
    const code = text.charCodeAt(at);
    if (code !== space && (code !== tab || delimiter === tab)) return at;
    at += 1;
  }
}

/** Where a cell without quotes ends: at a delimiter, a line end, a double quote or the end of the text. */
function endOfPlain(text: string, start: number, delimiter: number): number {
  let at = start;
  for (; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === delimiter || code === lineFeed || code === carriageReturn || code === doubleQuote) return at;
  }
  return at;
}

function endRow(read: { place: RowPlace; cells: string[]; end: number; line: number }): ScannedRow | null {
  const { place, cells, end, line } = read;
  const next = afterLineEnd(place, end);
  if (next === null) return null;
  const raw = place.text.slice(place.start, end);
  return { row: { line: place.line, cells, raw, trouble: null }, next, nextLine: line + 1 };
}

function endWithLine(place: RowPlace, from: number, trouble: RowTrouble): ScannedRow | null {
  const end = findLineEnd(place.text, from);
  const next = afterLineEnd(place, end);
  if (next === null) return null;
  const raw = place.text.slice(place.start, end);
  return { row: { line: place.line, cells: [], raw, trouble }, next, nextLine: trouble.line + 1 };
}

/** The place behind a line end; null when it cannot be known yet. */
function afterLineEnd({ text, isLast }: RowPlace, end: number): number | null {
  // A carriage return at the end of the text may be the first half of CR LF.
  const lastNeeded = text.charCodeAt(end) === carriageReturn ? end + 1 : end;
  if (lastNeeded >= text.length && !isLast) return null;
  return text.startsWith("\r\n", end) ? end + 2 : Math.min(end + 1, text.length);
}
