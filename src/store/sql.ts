import type { Database, Statement } from "better-sqlite3";
import type { Prisma } from "./generated/sqlite/client.ts";

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

/** Statements kept for a connection. Texts that hold a list of values come once and are not kept. */
const most = { statements: 400, characters: 4_000 };

/** Statements on a SQLite connection. They run inside whatever transaction the connection is in. */
export function sqliteSql(database: Database): Sql {
  const kept = new Map<string, Statement<unknown[]>>();
  const statementOf = (text: string): Statement<unknown[]> => {
    const known = kept.get(text);
    if (known) return known;
    const statement = database.prepare<unknown[]>(text).safeIntegers(false);
    if (text.length > most.characters) return statement;
    const [oldest] = kept.keys();
    if (kept.size >= most.statements && oldest !== undefined) kept.delete(oldest);
    kept.set(text, statement);
    return statement;
  };
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
