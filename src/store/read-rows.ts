import { idList } from "./bulk.ts";
import type { DatabaseKind, Read } from "./store.ts";

/** SQL for one cell of a row; instants come in milliseconds. */
export type RowCell = { readonly plain: string } | { readonly instant: string };

/** Rows that belong to ids: which cells, and the joins from `given.value`, the id, to their tables. */
export interface Rows {
  readonly cells: readonly RowCell[];
  readonly joins: readonly { readonly table: string; readonly on: string }[];
}

/** What a cell holds; truth comes as a number from SQLite. */
export type CellValue = string | number | boolean | null;

/**
 * The rows of these ids, in no order. They come as one JSON text, which takes a fraction of the time of cells that a
 * driver and Prisma make values of one by one.
 */
export async function readRows(read: Read, { cells, joins }: Rows, ids: readonly number[]): Promise<CellValue[][]> {
  if (ids.length === 0) return [];
  const row = cells.map((cell) => sqlOf(read.kind, cell)).join(", ");
  // SQLite then keeps to this order of tables, from the few ids to the many rows.
  const join = read.kind === "sqlite" ? "CROSS JOIN" : "JOIN";
  const from = joins.map(({ table, on }) => `${join} ${table} ON ${on}`).join(" ");
  const list =
    read.kind === "sqlite" ? `json_group_array(json_array(${row}))` : `json_agg(json_build_array(${row}))::text`;
  const [found] = await read.sql.rows<{ list: string | null }>(
    `SELECT ${list} AS list FROM ${idList(read, 1)} AS given ${from}`,
    JSON.stringify(ids),
  );
  return JSON.parse(found?.list ?? "[]") as CellValue[][];
}

function sqlOf(kind: DatabaseKind, cell: RowCell): string {
  if ("plain" in cell) return cell.plain;
  return kind === "sqlite" ? cell.instant : `(extract(epoch FROM ${cell.instant}) * 1000)::bigint`;
}

/** Cells of columns by name: those that end in `_at`, and `at` itself, are instants. */
export function columnCells(alias: string, columns: readonly string[]): RowCell[] {
  return columns.map((column) =>
    /(^|_)at$/.test(column) ? { instant: `${alias}.${column}` } : { plain: `${alias}.${column}` },
  );
}
