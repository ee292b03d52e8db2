import type { DatabaseKind, Read } from "./store.ts";

/** What a column holds; with a question mark, it may be empty. */
export type ColumnKind = "int" | "text" | "bool" | "instant" | "int?" | "text?";

/** A table with the columns that are read, each under the name that the program has for it. */
export interface Columns<C extends Readonly<Record<string, ColumnKind>> = Readonly<Record<string, ColumnKind>>> {
  readonly table: string;
  readonly columns: C;
}

interface Values {
  int: number;
  text: string;
  bool: boolean;
  instant: number;
  "int?": number | null;
  "text?": string | null;
}

/** A row as the program has it. Instants are UTC milliseconds. */
export type RowOf<T extends Columns> = { readonly [Name in keyof T["columns"]]: Values[T["columns"][Name]] };

/**
 * Rows of a table, by a statement of our own: ten times as fast as through Prisma, for what is asked at every click.
 * `rest` is what follows `FROM table`, with its values as `$1`, `$2`.
 */
export async function rowsOf<T extends Columns>(
  { kind, sql }: Pick<Read, "kind" | "sql">,
  from: T,
  rest: string,
  ...values: readonly (string | number | null)[]
): Promise<RowOf<T>[]> {
  const text = `SELECT ${cellsOf(kind, from)} FROM ${from.table} ${rest}`;
  return (await sql.rows<Cells>(text, ...values)).map((row) => decoded(from, row));
}

/** The rows that an `UPDATE` or `INSERT` has written, as they are by then. */
export async function writtenRows<T extends Columns>(
  { kind, sql }: Pick<Read, "kind" | "sql">,
  from: T,
  write: string,
  ...values: readonly (string | number | null)[]
): Promise<RowOf<T>[]> {
  return (await sql.rows<Cells>(`${write} RETURNING ${cellsOf(kind, from)}`, ...values)).map((row) =>
    decoded(from, row),
  );
}

type Cells = Readonly<Record<string, string | number | bigint | boolean | null>>;

const texts = new Map<Columns, Map<DatabaseKind, string>>();

function cellsOf(kind: DatabaseKind, from: Columns): string {
  const known = texts.get(from) ?? new Map<DatabaseKind, string>();
  texts.set(from, known);
  const text = known.get(kind) ?? cellsText(kind, from);
  known.set(kind, text);
  return text;
}

function cellsText(kind: DatabaseKind, { table, columns }: Columns): string {
  return Object.entries(columns)
    .map(([name, holds]) => {
      const column = `${table}.${name.replaceAll(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`)}`;
      const cell =
        holds === "instant" && kind === "postgresql" ? `(extract(epoch FROM ${column}) * 1000)::bigint` : column;
      return `${cell} AS "${name}"`;
    })
    .join(", ");
}

function decoded<T extends Columns>({ columns }: T, row: Cells): RowOf<T> {
  const cells = Object.entries(columns).map(([name, holds]) => {
    const cell = row[name] ?? null;
    if (cell === null && !holds.endsWith("?")) throw new Error(`column ${name} is empty`);
    if (cell === null) return [name, null];
    if (holds === "bool") return [name, Boolean(cell)];
    return [name, holds === "text" || holds === "text?" ? cell : Number(cell)];
  });
  return Object.fromEntries(cells) as RowOf<T>;
}
