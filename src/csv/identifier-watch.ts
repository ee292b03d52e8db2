import type { Columns } from "./column.ts";
import { IdentifierColumn, type Seen } from "./identifier-column.ts";
import type { CsvLine, CsvNotice } from "./items.ts";
import { layouts } from "./layout.ts";

/**
 * Watches the identifiers of all lines for what a single line cannot show: zeros at the front that a spreadsheet has
 * dropped from some of them, and long numbers of which it kept 15 digits. Columns of one name in several files are one
 * column, for they hold the same identifiers.
 */
export class IdentifierWatch {
  readonly #columns = new Map<string, IdentifierColumn>();
  readonly #namesOf = new Map<string, readonly string[]>(
    layouts.map(({ name, columns }) => [name, identifiersOf(columns)]),
  );

  /** Looks at the identifiers of a line. */
  add(line: CsvLine): void {
    const seen: Seen = { file: line.file, line: line.line };
    const values: Readonly<Record<string, unknown>> = line.values;
    for (const name of this.#namesOf.get(line.file) ?? []) {
      const value = values[name];
      if (typeof value === "string") this.#column(name).add(value, seen);
    }
  }

  /** What is suspicious, at most two notices a column. */
  notices(): CsvNotice[] {
    return [...this.#columns].flatMap(([name, column]) => [
      ...zerosLost(name, column).map((detail) => notice("zeros-lost", detail)),
      ...digitsLost(name, column).map((detail) => notice("digits-lost", detail)),
    ]);
  }

  #column(name: string): IdentifierColumn {
    const known = this.#columns.get(name);
    if (known !== undefined) return known;
    const column = new IdentifierColumn();
    this.#columns.set(name, column);
    return column;
  }
}

function identifiersOf(columns: Columns): string[] {
  return Object.entries(columns).flatMap(([name, { reader }]) => (reader.isIdentifier ? [name] : []));
}

function zerosLost(name: string, column: IdentifierColumn): string[] {
  const { pairs, shorter } = column;
  if (pairs !== null) {
    const [bare, padded] = pairs.first;
    const others = pairs.count === 1 ? "" : `, and ${pairs.count - 1} more`;
    return [
      `In the column ${name} two identifiers differ only by zeros at the front (${at(bare)} and ${at(padded)}${others}): ` +
        "a spreadsheet may have dropped them. They are taken as two.",
    ];
  }
  if (shorter === null) return [];
  return [
    `In the column ${name} the numbers with zeros at the front all have ${shorter.length} digits and others have fewer ` +
      `(the first in ${at(shorter.first)}): a spreadsheet may have dropped their zeros.`,
  ];
}

function digitsLost(name: string, column: IdentifierColumn): string[] {
  if (!column.isCut) return [];
  return [`All numbers of the column ${name} that have more than 15 digits end in zeros: a spreadsheet keeps 15.`];
}

function notice(code: CsvNotice["code"], detail: string): CsvNotice {
  return { type: "notice", code, file: null, detail };
}

function at({ file, line }: Seen): string {
  return `${file} line ${line}`;
}
