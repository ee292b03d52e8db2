import { idList } from "./bulk.ts";
import type { DatabaseKind, Read } from "./store.ts";

/** SQL for one number of a row; instants come in milliseconds. */
export type NumberCell = { readonly int: string } | { readonly instant: string };

/** Rows of numbers that belong to ids: which, and the joins from `given.value`, the id, to their tables. */
export interface NumberRows {
  readonly cells: readonly NumberCell[];
  readonly joins: readonly { readonly table: string; readonly on: string }[];
}

/** Stands where a row has no number: a list of plain numbers takes a third of the time of one that may hold null. */
export const noNumber = Number.MIN_SAFE_INTEGER;

/**
 * The rows of these ids, one number after the other, `cells.length` to a row, {@link noNumber} where there is none. In
 * no order. They come as one text: faster than cells that a driver and Prisma make values of one by one.
 */
export async function readNumbers(read: Read, { cells, joins }: NumberRows, ids: readonly number[]): Promise<number[]> {
  if (ids.length === 0) return [];
  const row = cells.map((cell) => `coalesce(${sqlOf(read.kind, cell)}, ${noNumber})`).join(", ");
  // SQLite then keeps to this order of tables, from the few ids to the many rows.
  const join = read.kind === "sqlite" ? "CROSS JOIN" : "JOIN";
  const from = joins.map(({ table, on }) => `${join} ${table} ON ${on}`).join(" ");
  const [found] = await read.sql.rows<{ numbers: string | null }>(
    `SELECT string_agg(concat_ws(',', ${row}), ',') AS numbers FROM ${idList(read, 1)} AS given ${from}`,
    JSON.stringify(ids),
  );
  return JSON.parse(`[${found?.numbers ?? ""}]`) as number[];
}

function sqlOf(kind: DatabaseKind, cell: NumberCell): string {
  if ("int" in cell) return cell.int;
  return kind === "sqlite" ? cell.instant : `(extract(epoch FROM ${cell.instant}) * 1000)::bigint`;
}
