import type { Database } from "better-sqlite3";
import { together, turn } from "./queue.ts";

/** So many transactions share a commit at most: the first of them waits for the last one. */
const most = 16;

type Work<T> = (database: Database) => Promise<T>;

interface Piece {
  run(database: Database): Promise<void>;
}

/**
 * Runs transactions one after another on the connection, in the order in which they came. Those that waited together are
 * forced to disk together: each is a savepoint of one transaction, so that one that fails leaves nothing and the others
 * are stored. Each resolves or fails once the commit is on disk, also one that failed: what made it fail may be something
 * that was written just before. When the commit itself fails, or SQLite gives up the whole transaction, all of them fail.
 */
export function groupCommits(connection: () => Promise<Database>): <T>(work: Work<T>) => Promise<T> {
  const add = together<Piece>(async (pieces) => {
    const database = await connection();
    database.exec("BEGIN IMMEDIATE");
    try {
      for (const piece of pieces) {
        await piece.run(database);
        await turn();
      }
      database.exec("COMMIT");
    } catch (error) {
      if (database.inTransaction) database.exec("ROLLBACK");
      throw error;
    }
  }, most);
  return async <T>(work: Work<T>): Promise<T> => {
    let outcome: { readonly done: T } | { readonly error: unknown } | undefined;
    await add({
      run: async (database) => {
        outcome = await savepoint(database, work);
      },
    });
    if (outcome === undefined) throw new Error("a transaction was committed that did not run");
    if ("error" in outcome) throw outcome.error;
    return outcome.done;
  };
}

/** Runs work that leaves nothing when it fails. Throws when the whole transaction is gone. */
async function savepoint<T>(
  database: Database,
  work: Work<T>,
): Promise<{ readonly done: T } | { readonly error: unknown }> {
  database.exec("SAVEPOINT piece");
  try {
    const done = await work(database);
    database.exec("RELEASE piece");
    return { done };
  } catch (error) {
    // A full disk and the like end the transaction of all.
    if (!database.inTransaction) throw error;
    database.exec("ROLLBACK TO piece");
    database.exec("RELEASE piece");
    return { error };
  }
}
