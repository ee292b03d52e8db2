import pg from "pg";
import { refuse } from "../../shared/problems.ts";
import { type AppliedMigration, appliedRow, type Migration, pendingMigrations } from "./migrate.ts";
import { storeProblem } from "./store-errors.ts";

const table = `CREATE TABLE IF NOT EXISTS _prisma_migrations (
  id VARCHAR(36) PRIMARY KEY NOT NULL, checksum VARCHAR(64) NOT NULL, finished_at TIMESTAMPTZ,
  migration_name VARCHAR(255) NOT NULL, logs TEXT, rolled_back_at TIMESTAMPTZ,
  started_at TIMESTAMPTZ NOT NULL DEFAULT now(), applied_steps_count INTEGER NOT NULL DEFAULT 0)`;

/** The advisory lock under which one process at a time migrates; the number is the one that Prisma's tool takes. */
const migrationLock = 72707369;

/** Applies what is missing to a PostgreSQL database. See `migrate`. */
export async function migratePostgres(url: string, migrations: readonly Migration[]): Promise<string[]> {
  const client = clientOf(url);
  try {
    await client.connect();
  } catch (error) {
    const known = storeProblem(error);
    if (known !== error) throw known;
    refuse("database-unreachable", "What answers at the address in the settings is no database server.");
  }
  try {
    await client.query("SELECT pg_advisory_lock($1)", [migrationLock]);
    await client.query(table);
    const pending = pendingMigrations(migrations, await appliedMigrations(client));
    for (const migration of pending) await applyOne(client, migration);
    return pending.map((m) => m.name);
  } catch (error) {
    throw storeProblem(error);
  } finally {
    await client.end();
  }
}

/** A client for that URL. What is wrong with a URL is not repeated: it may hold a password. */
function clientOf(url: string): pg.Client {
  try {
    const client = new pg.Client({ connectionString: url, connectionTimeoutMillis: 10_000 });
    // A broken connection also fails the query that runs, which is where it is told; unheard, it would end the process.
    client.on("error", () => undefined);
    return client;
  } catch {
    return refuse("database-unreachable", "The database URL in the settings cannot be read.");
  }
}

async function appliedMigrations(client: pg.Client): Promise<AppliedMigration[]> {
  const { rows } = await client.query(
    "SELECT migration_name, checksum, finished_at IS NOT NULL AS finished FROM _prisma_migrations WHERE rolled_back_at IS NULL",
  );
  return rows as AppliedMigration[];
}

async function applyOne(client: pg.Client, migration: Migration): Promise<void> {
  const row = appliedRow(migration);
  await client.query("BEGIN");
  try {
    await client.query(migration.sql);
    await client.query(
      `INSERT INTO _prisma_migrations (id, checksum, migration_name, started_at, finished_at, applied_steps_count)
       VALUES ($1, $2, $3, clock_timestamp(), clock_timestamp(), 1)`,
      [row.id, row.checksum, row.migration_name],
    );
    await client.query("COMMIT");
  } catch (error) {
    // On a broken connection there is nothing left to roll back; what broke it is what has to be told.
    await client.query("ROLLBACK").catch(() => undefined);
    throw error;
  }
}
