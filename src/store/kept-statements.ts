import type { ColumnDefinition, Database, RunResult, Statement } from "better-sqlite3";

/** Statements kept for each connection. The longest lists of ids are part of a text of their own, and are not kept. */
const most = { statements: 400, characters: 4_000 };

/** One statement of one text, whatever it is given: what Prisma's driver asks of a statement, and nothing else. */
interface Bound {
  readonly reader: boolean;
  columns(): ColumnDefinition[];
  run(): RunResult;
  raw(): { all(): unknown[] };
}

/**
 * Makes a connection keep the statements that it prepares: Prisma's driver prepares each anew, which takes longer than
 * most of them run. A statement that the driver binds once and
 * for all could not be given other values, so that here the values wait until it runs. SQLite prepares a kept statement
 * again by itself when the schema changed.
 */
export function keepStatements(client: Database): void {
  const statementOf = keeping(client.prepare.bind(client) as (sql: string) => Statement<unknown[]>);
  Object.assign(client, {
    prepare: (sql: string) => {
      const statement = statementOf(sql);
      return { ...boundTo(statement, []), bind: (values: unknown[]) => boundTo(statement, values) };
    },
  });
}

/** Prepares each text once. The least recently used statement goes when a new one comes. */
export function keeping(prepare: (sql: string) => Statement<unknown[]>): (sql: string) => Statement<unknown[]> {
  const kept = new Map<string, Statement<unknown[]>>();
  return (sql) => {
    const statement = kept.get(sql) ?? prepare(sql);
    if (sql.length > most.characters) return statement;
    kept.delete(sql);
    kept.set(sql, statement);
    const [oldest] = kept.keys();
    if (kept.size > most.statements && oldest !== undefined) kept.delete(oldest);
    return statement;
  };
}

function boundTo(statement: Statement<unknown[]>, values: unknown[]): Bound {
  return {
    reader: statement.reader,
    columns: () => statement.columns(),
    run: () => statement.run(values),
    raw: () => ({ all: () => statement.raw().all(values) }),
  };
}
