import Database from "better-sqlite3";
import { refuse } from "../../shared/problems.ts";
import { databaseKind, sqliteFile } from "./open-store.ts";
import { isRetryable, storeProblem } from "./store-errors.ts";

/** Held here, so that a lock lasts with the process and not only as long as somebody keeps what `ownDatabase` answered. */
const ownedLocks = new Set<Database.Database>();

/**
 * Takes a SQLite database for this process alone, until `release` or the end of the process, however it ends: the
 * operating system holds the lock on a file beside it. PostgreSQL needs no owner; its rows are locked one by one.
 * Refuses `database-in-use` and `database-not-writable`.
 */
export function ownDatabase(url: string): { release(): void } {
  if (databaseKind(url) === "postgresql") return { release: () => undefined };
  let lock: Database.Database | undefined;
  try {
    lock = new Database(`${sqliteFile(url)}.owner`, { timeout: 0 });
    lock.exec("BEGIN EXCLUSIVE");
  } catch (error) {
    lock?.close();
    if (!isRetryable(error)) throw storeProblem(error);
    refuse("database-in-use", `Another process has the database ${sqliteFile(url)} open.`);
  }
  const owned = lock;
  ownedLocks.add(owned);
  return {
    release: () => {
      ownedLocks.delete(owned);
      owned.close();
    },
  };
}
