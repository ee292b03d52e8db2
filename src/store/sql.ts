import type { Database } from "better-sqlite3";
import type { Prisma } from "./generated/sqlite/client.ts";
import { keeping } from "./kept-statements.ts";

/** A value of a statement. Instants are given as the database keeps them: see `bulk.ts`. */
export type SqlValue = string | number | null;

/**
 * Statements of our own inside a transaction or snapshot, for what is asked at every click: through Prisma each takes
 * ten times as long. Values stand in the text as `$1`, `$2`. Truth comes as a number from SQLite.
 */
export interface Sql {
  rows<Row extends object>(text: string, ...values: readonly SqlValue[]): Promise<Row[]>;
  /** Resolves to the number of rows that were changed. */
  run(text: string, ...values: readonly SqlValue[]): Promise<number>;
}

/** Statements on a SQLite connection. They run inside whatever transaction the connection is in. */
export function sqliteSql(database: Database): Sql {
  const statementOf = keeping((text) => database.prepare<unknown[]>(text).safeIntegers(false));
  return {
    rows: async <Row>(text: string, ...values: readonly SqlValue[]) => statementOf(text).all(named(values)) as Row[],
    run: async (text, ...values) => statementOf(text).run(named(values)).changes,
  };
}

/** The values by the names that they have in the text. Whole numbers are integers to SQLite, and not reals. */
function named(values: readonly SqlValue[]): Record<number, SqlValue | bigint> {
  return Object.fromEntries(
    values.map((value, i) => [i + 1, typeof value === "number" && Number.isInteger(value) ? BigInt(value) : value]),
  );
}

/** Statements through Prisma's connection to PostgreSQL, in the transaction that it is in. */
export function prismaSql(db: Prisma.TransactionClient): Sql {
  return {
    rows: <Row>(text: string, ...values: readonly SqlValue[]) => db.$queryRawUnsafe<Row[]>(text, ...values),
    run: (text, ...values) => db.$executeRawUnsafe(text, ...values),
  };
}
