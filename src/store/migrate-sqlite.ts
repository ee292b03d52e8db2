import Database from "better-sqlite3";
import { type AppliedMigration, appliedRow, type Migration, pendingMigrations } from "./migrate.ts";
import { isRetryable, storeProblem } from "./store-errors.ts";

const table = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
  "id" TEXT PRIMARY KEY NOT NULL, "checksum" TEXT NOT NULL, "finished_at" DATETIME, "migration_name" TEXT NOT NULL,
  "logs" TEXT, "rolled_back_at" DATETIME, "started_at" DATETIME NOT NULL DEFAULT current_timestamp,
  "applied_steps_count" INTEGER UNSIGNED NOT NULL DEFAULT 0)`;

/**
 * Applies what is missing to a SQLite file, which is made when there is none. Waits `patienceMs` for another process
 * that migrates. See `migrate`.
 */
export function migrateSqlite(file: string, migrations: readonly Migration[], patienceMs = 10_000): string[] {
  let db: Database.Database | undefined;
  try {
    db = new Database(file, { timeout: 0 });
    keepWriteAheadLog(db, patienceMs);
    db.pragma(`busy_timeout = ${patienceMs}`);
    db.pragma("synchronous = FULL");
    return applyPending(db, migrations);
  } catch (error) {
    throw storeProblem(error);
  } finally {
    db?.close();
  }
}

const pauseMs = 10;

/** SQLite does not wait for others itself when two processes change the mode of a new file at the same moment. */
function keepWriteAheadLog(db: Database.Database, patienceMs: number): void {
  for (let leftMs = patienceMs; ; leftMs -= pauseMs) {
    try {
      db.pragma("journal_mode = WAL");
      return;
    } catch (error) {
      if (leftMs <= 0 || !isRetryable(error)) throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, pauseMs);
    }
  }
}

function applyPending(db: Database.Database, migrations: readonly Migration[]): string[] {
  db.exec(table);
  const done: string[] = [];
  // Another process may be migrating: each round takes the write lock first, then looks at what is left.
  for (;;) {
    db.pragma("foreign_keys = OFF");
    db.exec("BEGIN IMMEDIATE");
    try {
      const [next] = pendingMigrations(migrations, appliedMigrations(db));
      if (next) applyOne(db, next);
      db.exec("COMMIT");
      if (!next) return done;
      done.push(next.name);
    } catch (error) {
      if (db.inTransaction) db.exec("ROLLBACK");
      throw error;
    }
  }
}

function appliedMigrations(db: Database.Database): AppliedMigration[] {
  const rows = db
    .prepare('SELECT migration_name, checksum, finished_at FROM "_prisma_migrations" WHERE rolled_back_at IS NULL')
    .all() as { migration_name: string; checksum: string; finished_at: unknown }[];
  return rows.map((row) => ({ ...row, finished: row.finished_at !== null }));
}

function applyOne(db: Database.Database, migration: Migration): void {
  db.exec(migration.sql);
  const broken = db.pragma("foreign_key_check") as unknown[];
  if (broken.length > 0) throw new Error(`${migration.name} leaves ${broken.length} rows without their parent`);
  const row = appliedRow(migration);
  db.prepare(
    `INSERT INTO "_prisma_migrations" (id, checksum, migration_name, started_at, finished_at, applied_steps_count)
     VALUES (?, ?, ?, strftime('%Y-%m-%dT%H:%M:%f+00:00', 'now'), strftime('%Y-%m-%dT%H:%M:%f+00:00', 'now'), 1)`,
  ).run(row.id, row.checksum, row.migration_name);
}
