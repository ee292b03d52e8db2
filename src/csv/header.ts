import { readableText } from "./cells/characters.ts";
import type { Column, Layout } from "./column.ts";
import { columnName } from "./column-name.ts";
import { faultAt, faultsOf } from "./fault.ts";
import type { CsvFault } from "./items.ts";
import type { Row } from "./scan-row.ts";

/** A column of a file in the order of the file. */
export interface PlacedColumn {
  readonly name: string;
  readonly column: Column<unknown>;
  /** Its place in the file, from 1. */
  readonly position: number;
}

/** The columns that a header line names, or everything that is wrong with it. */
export type Header = { readonly columns: readonly PlacedColumn[] } | { readonly faults: readonly CsvFault[] };

/** Reads the header line of a file: names in any order and case, each known and there once, the required ones all. */
export function readHeader(row: Row, layout: Layout): Header {
  const place = { file: layout.name, line: row.line };
  if (row.trouble !== null) {
    const { code, detail, line, cell } = row.trouble;
    return { faults: [faultAt({ file: layout.name, line, position: cell }, code, detail)] };
  }
  const names = row.cells.map(columnName);
  if (!names.some((name) => Object.hasOwn(layout.columns, name))) {
    return { faults: [faultAt(place, "csv-header-missing", `No column is named in this line. ${known(layout)}`)] };
  }
  const columns: PlacedColumn[] = [];
  const faults: CsvFault[] = [];
  for (const [index, name] of names.entries()) {
    const position = index + 1;
    const column = Object.hasOwn(layout.columns, name) ? layout.columns[name] : undefined;
    const first = columns.find((earlier) => earlier.name === name);
    if (column === undefined) faults.push(...notKnown({ ...place, position }, row.cells[index] ?? "", layout));
    else if (first === undefined) columns.push({ name, column, position });
    else faults.push(faultAt({ ...place, column: name, position }, "csv-column-repeated", repeated(first, position)));
  }
  faults.push(
    ...missing(names, layout).map((column) => faultAt({ ...place, column }, "csv-column-missing", missed(column))),
  );
  return faults.length > 0 ? { faults } : { columns };
}

function notKnown(place: { file: string; line: number; position: number }, cell: string, layout: Layout): CsvFault[] {
  try {
    const name = readableText(cell);
    const title =
      name === "" ? `Column ${place.position} has no name.` : `No column is called ${JSON.stringify(name)}.`;
    return [faultAt(place, "csv-column-unknown", `${title} ${known(layout)}`)];
  } catch (error) {
    return faultsOf(place, error);
  }
}

function known({ name, columns }: Layout): string {
  return `The columns of ${name} are: ${Object.keys(columns).join(", ")}.`;
}

function missing(names: readonly string[], { columns }: Layout): string[] {
  return Object.entries(columns).flatMap(([name, { isRequired }]) =>
    isRequired && !names.includes(name) ? [name] : [],
  );
}

function missed(name: string): string {
  return `The column ${name} is required and is not in the header line.`;
}

function repeated({ name, position }: PlacedColumn, again: number): string {
  return `The column ${name} is there twice: as column ${position} and as column ${again}.`;
}
