import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import type { Database } from "better-sqlite3";
import { keepStatements } from "./kept-statements.ts";

/**
 * How a committed record survives a power cut, and how readers and the writer stay out of each other's way:
 * write-ahead log, every commit forced to disk, foreign keys held, five seconds of patience for another process.
 */
const pragmas = ["journal_mode = WAL", "synchronous = FULL", "foreign_keys = ON", "busy_timeout = 5000"];

/**
 * The SQLite driver behind Prisma with our pragmas set on the very connection that Prisma uses.
 * A reader's connection cannot write at all. Instants are stored as whole milliseconds since 1970.
 */
export class LedgerSqlite extends PrismaBetterSqlite3 {
  readonly #readonly: boolean;

  constructor(file: string, options: { readonly: boolean }) {
    super({ url: file, readonly: options.readonly }, { timestampFormat: "unixepoch-ms" });
    this.#readonly = options.readonly;
  }

  override async connect(): ReturnType<PrismaBetterSqlite3["connect"]> {
    const adapter = await super.connect();
    const { client } = adapter as unknown as { client: Database };
    for (const pragma of this.#readonly ? pragmas.slice(2) : pragmas) client.pragma(pragma);
    const mode = client.pragma("journal_mode", { simple: true });
    if (mode !== "wal") throw new Error(`SQLite runs in ${String(mode)} mode; only the write-ahead log is safe here`);
    keepStatements(client);
    return adapter;
  }
}
