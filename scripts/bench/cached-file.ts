import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { committedMigrations, migrate } from "../../src/store/migrate.ts";

/**
 * A migrated SQLite file that `write` fills in one transaction, kept in the folder for temporary files and found again
 * by `key`: whatever decides about its contents. An older one of that name makes room for it. Returns its path and the seconds that writing took, 0 when it was there.
 */
export async function cachedFile(
  name: string,
  key: unknown,
  write: (database: Database.Database) => void,
): Promise<{ file: string; writtenS: number }> {
  const checksums = committedMigrations("sqlite").map((migration) => migration.checksum);
  const digest = createHash("sha256")
    .update(JSON.stringify([key, checksums]))
    .digest("hex");
  const folder = join(tmpdir(), "dwell-ledger-bench");
  const file = join(folder, `${name}-${digest.slice(0, 16)}.sqlite`);
  if (existsSync(file)) return { file, writtenS: 0 };
  const startMs = performance.now();
  mkdirSync(folder, { recursive: true });
  for (const old of readdirSync(folder)) if (old.startsWith(`${name}-`)) rmSync(join(folder, old), { force: true });
  const unfinished = `${file}.${process.pid}`;
  await migrate(unfinished);
  const database = new Database(unfinished);
  // Nobody reads it before it is whole, so nothing need be safe meanwhile.
  for (const pragma of ["journal_mode = OFF", "synchronous = OFF", "foreign_keys = OFF", "cache_size = -200000"])
    database.pragma(pragma);
  database.transaction(() => write(database))();
  database.pragma("journal_mode = WAL");
  database.close();
  for (const rest of ["-wal", "-shm"]) rmSync(`${unfinished}${rest}`, { force: true });
  renameSync(unfinished, file);
  return { file, writtenS: (performance.now() - startMs) / 1000 };
}
