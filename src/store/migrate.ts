import { createHash, randomUUID } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { refuse } from "../../shared/problems.ts";
import { migratePostgres } from "./migrate-postgres.ts";
import { migrateSqlite } from "./migrate-sqlite.ts";
import { databaseKind, sqliteFile } from "./open-store.ts";

/** One step of the history of the tables, as committed. */
export interface Migration {
  readonly name: string;
  readonly sql: string;
  readonly checksum: string;
}

/** A migration that a database says it has. */
export interface AppliedMigration {
  readonly migration_name: string;
  readonly checksum: string;
  readonly finished: boolean;
}

/**
 * Brings a database up to date: each missing migration in one transaction, in the order of names, recorded in the
 * table that Prisma's own tool uses, so that both agree. Returns the names that were applied.
 * Refuses `database-newer` when the database knows migrations that this version does not, `database-edited` when an
 * applied one differs from the committed one, `database-unreachable`, `database-not-writable`, `disk-full`.
 */
export async function migrate(url: string): Promise<string[]> {
  const kind = databaseKind(url);
  const migrations = committedMigrations(kind);
  if (kind === "postgresql") return migratePostgres(url, migrations);
  const file = sqliteFile(url);
  try {
    makeFolder(dirname(resolve(file)));
  } catch {
    refuse("database-not-writable", `The folder ${dirname(file)} cannot be made.`);
  }
  return migrateSqlite(file, migrations);
}

/**
 * Makes a folder and those above it, one at a time: where the system says that the folder above is missing although it
 * is there (as under /proc), Node's own recursive way never ends.
 */
function makeFolder(folder: string): void {
  if (existsSync(folder)) return;
  if (dirname(folder) !== folder) makeFolder(dirname(folder));
  mkdirSync(folder);
}

/** The migrations of one database that this version holds, in order. */
export function committedMigrations(kind: "sqlite" | "postgresql"): Migration[] {
  const folder = fileURLToPath(new URL(`../../prisma/migrations/${kind}/`, import.meta.url));
  return readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort()
    .map((name) => {
      const sql = readFileSync(join(folder, name, "migration.sql"), "utf8");
      return { name, sql, checksum: createHash("sha256").update(sql).digest("hex") };
    });
}

/** The migrations still to apply. Refuses `database-newer` and `database-edited`. */
export function pendingMigrations(
  migrations: readonly Migration[],
  applied: readonly AppliedMigration[],
): readonly Migration[] {
  for (const row of applied) {
    const known = migrations.find((m) => m.name === row.migration_name);
    if (!known)
      refuse(
        "database-newer",
        `The database holds the migration ${row.migration_name}, which this version of Dwell Ledger does not know.`,
      );
    if (known.checksum !== row.checksum || !row.finished)
      refuse("database-edited", `The migration ${row.migration_name} was not applied as this version holds it.`);
  }
  const names = new Set(applied.map((row) => row.migration_name));
  return migrations.filter((m) => !names.has(m.name));
}

/** A new row for the table of applied migrations. */
export function appliedRow(migration: Migration): { id: string; checksum: string; migration_name: string } {
  return { id: randomUUID(), checksum: migration.checksum, migration_name: migration.name };
}
