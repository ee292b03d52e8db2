import type { Layout, Reading } from "./column.ts";
import { faultAt, refusedFile } from "./fault.ts";
import { readHeader } from "./header.ts";
import type { CsvItem } from "./items.ts";
import { isBlank, LineReader } from "./read-line.ts";
import { RowSplitter } from "./row-splitter.ts";
import { type Row, rowCharactersMost } from "./scan-row.ts";
import { startOf } from "./start.ts";

/** Blank rows beyond these are only counted: a spreadsheet can write a million of them. */
const blankNamed = 20;

/** Reads one file from its blocks of text: first the header, then line by line. */
export class FileReader {
  readonly #layout: Layout;
  readonly #reading: Reading;
  #splitter: RowSplitter | null = null;
  #lines: LineReader | null = null;
  #headerLine: number | null = null;
  #isStopped = false;
  #hasLines = false;
  #blanks = 0;
  readonly #blankLines: number[] = [];

  constructor(layout: Layout, reading: Reading) {
    this.#layout = layout;
    this.#reading = reading;
  }

  /** True when nothing more can be read, so that further blocks need not be fetched. */
  get isStopped(): boolean {
    return this.#isStopped;
  }

  /** Takes the next block of text; returns what it completes. The first block must hold the whole header or all. */
  take(block: string): CsvItem[] {
    if (this.#splitter !== null) return this.#read(this.#splitter, block, false);
    const { delimiter, skipped, line } = startOf(block, this.#layout);
    this.#splitter = new RowSplitter(delimiter, line);
    return this.#read(this.#splitter, block.slice(skipped), false);
  }

  /** Returns what is left when all blocks were taken. */
  end(): CsvItem[] {
    const items = this.#splitter === null ? [] : this.#read(this.#splitter, "", true);
    if (this.#isStopped) return items;
    if (this.#headerLine === null) return this.#stop([faultAt(this.#place(), "csv-empty", "Nothing is in it.")]);
    if (!this.#hasLines) items.push(this.#headerOnly());
    if (this.#blanks > 0) items.push(this.#blankRows());
    return items;
  }

  #read(splitter: RowSplitter, block: string, isLast: boolean): CsvItem[] {
    if (this.#isStopped) return [];
    const items: CsvItem[] = [];
    for (const row of splitter.push(block, isLast)) {
      const blank = isBlank(row);
      if (blank && this.#lines === null) continue;
      if (blank) items.push(this.#blank(row.line));
      else if (this.#lines === null) items.push(...this.#begin(row));
      else items.push(this.#line(this.#lines, row));
      if (this.#isStopped) return items;
    }
    if (splitter.endless !== null) {
      const detail = `No line end comes within ${rowCharactersMost} characters.`;
      items.push(
        ...this.#stop([faultAt({ ...this.#place(), line: splitter.endless.line }, "csv-line-too-long", detail)]),
      );
    }
    return items;
  }

  #begin(row: Row): CsvItem[] {
    this.#headerLine = row.line;
    const header = readHeader(row, this.#layout);
    if ("faults" in header) return this.#stop(header.faults);
    this.#lines = new LineReader(this.#layout, header.columns, this.#reading);
    return [];
  }

  #line(lines: LineReader, row: Row): CsvItem {
    this.#hasLines = true;
    return lines.read(row);
  }

  #stop(faults: Parameters<typeof refusedFile>[1]): CsvItem[] {
    this.#isStopped = true;
    return [refusedFile(this.#layout.name, faults)];
  }

  #blank(line: number): CsvItem {
    this.#blanks += 1;
    if (this.#blankLines.length < blankNamed) this.#blankLines.push(line);
    return { type: "blank", file: this.#layout.name, line };
  }

  #blankRows(): CsvItem {
    const lines = this.#blankLines.join(", ");
    const more = this.#blanks > this.#blankLines.length ? " and more" : "";
    const detail =
      this.#blanks === 1 ? `1 row is blank: line ${lines}.` : `${this.#blanks} rows are blank: lines ${lines}${more}.`;
    return { type: "notice", code: "rows-blank", file: this.#layout.name, detail };
  }

  #headerOnly(): CsvItem {
    return { type: "notice", code: "header-only", file: this.#layout.name, detail: "There is a header and no line." };
  }

  #place(): { file: string } {
    return { file: this.#layout.name };
  }
}
