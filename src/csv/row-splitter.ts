import { type Row, rowCharactersMost, type ScannedRow, scanRow } from "./scan-row.ts";

/** A row that is longer than any can be: reading stops there. */
export interface EndlessRow {
  readonly line: number;
}

/** Splits text that comes in blocks into rows; holds no more than one row and one block. */
export class RowSplitter {
  readonly #delimiter: string;
  #rest = "";
  #line: number;
  #endless: EndlessRow | null = null;

  constructor(delimiter: string, firstLine: number) {
    this.#delimiter = delimiter;
    this.#line = firstLine;
  }

  /** The row that was too long, once there was one; nothing behind it is read. */
  get endless(): EndlessRow | null {
    return this.#endless;
  }

  /** Takes the next block; returns the rows that are complete with it. `isLast` when no other follows. */
  push(block: string, isLast: boolean): Row[] {
    const text = this.#rest === "" ? block : this.#rest + block;
    const rows: Row[] = [];
    let start = 0;
    while (start < text.length && this.#endless === null) {
      const scanned = scanRow({ text, start, line: this.#line, delimiter: this.#delimiter, isLast });
      const length = (scanned === null ? text.length : scanned.next) - start;
      if (length > rowCharactersMost) this.#endless = { line: this.#line };
      else if (scanned === null) break;
      else start = this.#accept(scanned, rows);
    }
    this.#rest = text.slice(start);
    return rows;
  }

  #accept({ row, next, nextLine }: ScannedRow, rows: Row[]): number {
    rows.push(row);
    this.#line = nextLine;
    return next;
  }
}
