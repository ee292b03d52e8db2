import { createHash } from "node:crypto";
import type { Migration } from "../../src/store/migrate.ts";
import { migratePostgres } from "../../src/store/migrate-postgres.ts";
import { migrateSqlite } from "../../src/store/migrate-sqlite.ts";
import type { TestDatabase } from "./databases.ts";

/** A migration made up for a test. */
export function planted(name: string, sql: string): Migration {
  return { name, sql, checksum: createHash("sha256").update(sql).digest("hex") };
}

/** Applies a list of migrations in the place of the committed ones. */
export async function applyPlanted({ kind, url }: TestDatabase, migrations: readonly Migration[]): Promise<string[]> {
  return kind === "sqlite" ? migrateSqlite(url, migrations) : migratePostgres(url, migrations);
}
