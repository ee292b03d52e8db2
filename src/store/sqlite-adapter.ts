import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import type { Database } from "better-sqlite3";
import { keepStatements } from "./kept-statements.ts";

/**
 * How a committed record survives a power cut, and how readers and the writer stay out of each other's way:
 * write-ahead log, every commit forced to disk, foreign keys held, five seconds of patience for another process.
 */
const pragmas = ["journal_mode = WAL", "synchronous = FULL", "foreign_keys = ON", "busy_timeout = 5000"];

type Adapter = Awaited<ReturnType<PrismaBetterSqlite3["connect"]>>;

/**
 * The SQLite driver behind Prisma with our pragmas set on the very connection that Prisma uses.
 * A reader's connection cannot write at all. Instants are stored as whole milliseconds since 1970.
 */
export class LedgerSqlite extends PrismaBetterSqlite3 {
  readonly #readonly: boolean;
  #database: Database | null = null;

  constructor(file: string, options: { readonly: boolean }) {
    super({ url: file, readonly: options.readonly }, { timestampFormat: "unixepoch-ms" });
    this.#readonly = options.readonly;
  }

  /** The connection. Throws an Error before Prisma has made it. */
  get database(): Database {
    if (this.#database === null) throw new Error("the database is not connected");
    return this.#database;
  }

  override async connect(): Promise<Adapter> {
    const adapter = await super.connect();
    const { client } = adapter as unknown as { client: Database };
    for (const pragma of this.#readonly ? pragmas.slice(2) : pragmas) client.pragma(pragma);
    const mode = client.pragma("journal_mode", { simple: true });
    if (mode !== "wal") throw new Error(`SQLite runs in ${String(mode)} mode; only the write-ahead log is safe here`);
    const unkept = { prepare: client.prepare.bind(client) };
    keepStatements(client);
    this.#database = Object.assign(Object.create(client), unkept) as Database;
    startInside(adapter, client);
    return adapter;
  }
}

/**
 * Makes Prisma's own transactions, which some of its calls need, savepoints where the store has begun a transaction
 * already: SQLite has no transaction inside another one.
 */
function startInside(adapter: Adapter, client: Database): void {
  const outside = adapter.startTransaction.bind(adapter);
  adapter.startTransaction = async (isolation) => {
    if (!client.inTransaction) return outside(isolation);
    client.exec("SAVEPOINT inside");
    // Phantom: the driver ends it, and Prisma sends no statement of its own for that.
    return Object.assign(Object.create(adapter) as Awaited<ReturnType<typeof outside>>, {
      options: { usePhantomQuery: true },
      commit: async () => void client.exec("RELEASE inside"),
      rollback: async () => {
        client.exec("ROLLBACK TO inside");
        client.exec("RELEASE inside");
      },
    });
  };
}
