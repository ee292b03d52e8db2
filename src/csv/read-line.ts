import { refuse } from "../../shared/problems.ts";
import { emptyOrganismFaults } from "../domain/intake/empty-organism.ts";
import { type IntakeFile, type IntakeValues, specimenKey } from "../domain/intake/intake-line.ts";
import { lineAbout } from "../domain/intake/line-about.ts";
import { readableText } from "./cells/characters.ts";
import type { CellContext, Layout, MarkKind, Reading } from "./column.ts";
import { faultAt, faultsOf } from "./fault.ts";
import type { PlacedColumn } from "./header.ts";
import type { CsvFault, CsvLine, CsvMark, CsvRefused } from "./items.ts";
import { quotedCell } from "./quoted-cell.ts";
import type { Row } from "./scan-row.ts";

/** True for a row that holds nothing: a blank line, or the empty cells of a spreadsheet. */
export function isBlank(row: Row): boolean {
  return row.trouble === null && row.cells.every((cell) => cell.trim() === "");
}

/** Reads the rows of one file as lines with values, by the columns of its header. */
export class LineReader {
  readonly #layout: Layout;
  readonly #columns: readonly PlacedColumn[];
  readonly #empty: Readonly<Record<string, unknown>>;
  readonly #context: CellContext;
  #marked: MarkKind[] = [];

  constructor(layout: Layout, columns: readonly PlacedColumn[], reading: Reading) {
    this.#layout = layout;
    this.#columns = columns;
    this.#empty = Object.fromEntries(Object.entries(layout.columns).map(([name, column]) => [name, column.whenEmpty]));
    this.#context = { ...reading, mark: (kind) => this.#marked.push(kind) };
  }

  /** The row as a line with its values, or refused with every fault in it. */
  read(row: Row): CsvLine | CsvRefused {
    if (row.trouble !== null) return this.#refuse(row, [this.#troubleOf(row.trouble)]);
    if (row.cells.length !== this.#columns.length) return this.#refuse(row, [this.#cellCount(row)]);
    const values = { ...this.#empty };
    const marks: CsvMark[] = [];
    const faults: CsvFault[] = [];
    for (const [index, placed] of this.#columns.entries()) {
      try {
        const value = this.#readCell(row.cells[index] ?? "", placed);
        if (value !== undefined) values[placed.name] = value;
        marks.push(...this.#marked.splice(0).map((kind) => ({ kind, column: placed.name })));
      } catch (error) {
        const place = { file: this.#layout.name, line: row.line, column: placed.name, position: placed.position };
        const quote = quotedCell(row.cells[index] ?? "", placed, this.#cellsOf(row));
        faults.push(...faultsOf(place, error).map((fault) => ({ ...fault, detail: `${fault.detail}${quote}` })));
      }
    }
    if (faults.length === 0) faults.push(...this.#together(row, values));
    if (faults.length > 0) return this.#refuse(row, faults, values);
    const { line, raw } = row;
    // Safe: each value was read by the reader of its column, and the type of a line is made of those readers.
    return { type: "line", file: this.#layout.name, line, values, marks, raw } as unknown as CsvLine;
  }

  #cellsOf({ cells }: Row): [PlacedColumn, string][] {
    return this.#columns.map((column, index) => [column, cells[index] ?? ""]);
  }

  /** The value of a cell; undefined when it is empty and may be. */
  #readCell(cell: string, { column, name }: PlacedColumn): unknown {
    const text = readableText(cell);
    if (text !== "") return column.reader.read(text, this.#context);
    return column.isRequired ? refuse("csv-cell-empty", `The column ${name} needs a value in every line.`) : undefined;
  }

  /** What is wrong with values that are readable each by itself. */
  #together({ line }: Row, values: Readonly<Record<string, unknown>>): CsvFault[] {
    const { name: file } = this.#layout;
    if (file !== "specimens.csv") return [];
    // Safe: the values were read by the readers of the columns of this file.
    const said = values as unknown as IntakeValues["specimens.csv"];
    return emptyOrganismFaults(said, this.#context.settings).map(({ code, detail, pointer }) => {
      const column = (pointer ?? "").slice(1);
      const position = this.#columns.find(({ name }) => name === column)?.position;
      return faultAt({ file, line, column, ...(position === undefined ? {} : { position }) }, code, detail);
    });
  }

  #troubleOf({ code, detail, line, cell }: NonNullable<Row["trouble"]>): CsvFault {
    const column = this.#columns[cell - 1]?.name ?? null;
    return faultAt({ file: this.#layout.name, line, column, position: cell }, code, detail);
  }

  #cellCount(row: Row): CsvFault {
    const cells = row.cells.length;
    const detail = `The line has ${cells} ${cells === 1 ? "cell" : "cells"} and the header has ${this.#columns.length}.`;
    // The first column without a cell, or the last one before the cells that have none.
    const position = Math.min(cells + 1, this.#columns.length);
    const column = this.#columns[position - 1]?.name ?? null;
    return faultAt({ file: this.#layout.name, line: row.line, column, position }, "csv-cell-count", detail);
  }

  #refuse({ line, raw }: Row, faults: readonly CsvFault[], read: Readonly<Record<string, unknown>> = {}): CsvRefused {
    // Safe: the layouts are those of the files that are taken in.
    const file = this.#layout.name as IntakeFile;
    const stay = typeof read.stay === "string" ? read.stay : null;
    const specimen = file === "specimens.csv" ? specimenOf(read) : null;
    const named = specimen === null ? { stay } : { stay, specimen };
    const about = lineAbout(file, read, this.#context.zone);
    return { type: "refused", file, line, raw, wholeFile: false, faults, ...named, about };
  }
}

/** The specimen of a line some of whose values could be read; null when too few of them were. */
function specimenOf({ stay, specimen = null, kind, collected }: Readonly<Record<string, unknown>>): string | null {
  if (typeof stay !== "string") return null;
  if (specimen === null && (typeof kind !== "string" || typeof collected !== "number")) return null;
  // Safe: each value that is there was read by the reader of its column.
  return specimenKey({ stay, specimen, kind, collected } as Parameters<typeof specimenKey>[0]);
}
