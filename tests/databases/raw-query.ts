import Database from "better-sqlite3";
import pg from "pg";
import { databaseKind, sqliteFile } from "../../src/store/open-store.ts";

/** Rows of one statement on a connection of its own, by the database's driver alone. */
export async function rawQuery(url: string, sql: string): Promise<Record<string, unknown>[]> {
  if (databaseKind(url) === "sqlite") {
    const db = new Database(sqliteFile(url));
    try {
      const statement = db.prepare(sql);
      if (statement.reader) return statement.all() as Record<string, unknown>[];
      statement.run();
      return [];
    } finally {
      db.close();
    }
  }
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  try {
    return (await client.query(sql)).rows as Record<string, unknown>[];
  } finally {
    await client.end();
  }
}

/** The names of the tables, without those of the database itself and of the list of migrations. */
export async function tableNames(url: string): Promise<string[]> {
  const rows = await rawQuery(
    url,
    databaseKind(url) === "sqlite"
      ? "SELECT name FROM sqlite_master WHERE type = 'table' AND name NOT LIKE 'sqlite_%'"
      : "SELECT table_name AS name FROM information_schema.tables WHERE table_schema = 'public'",
  );
  return rows
    .map((row) => String(row.name))
    .filter((name) => name !== "_prisma_migrations")
    .sort();
}
