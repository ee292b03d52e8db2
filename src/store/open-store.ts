import { PrismaPg } from "@prisma/adapter-pg";
import type { Database } from "better-sqlite3";
import { refuse } from "../../shared/problems.ts";
import { type AuditBy, writeAudits } from "./audit.ts";
import { claimsInProcess, claimsOnServer } from "./claims.ts";
import { PrismaClient as PostgresClient } from "./generated/postgresql/client.ts";
import { PrismaClient as SqliteClient } from "./generated/sqlite/client.ts";
import { groupCommits } from "./group-commits.ts";
import { idBlocks } from "./id-blocks.ts";
import { oneAtATime, together } from "./queue.ts";
import { prismaSql, type Sql, sqliteSql } from "./sql.ts";
import { LedgerSqlite } from "./sqlite-adapter.ts";
import type { DatabaseKind, Read, Store, Tx, TxOptions } from "./store.ts";
import { isRetryable, storeProblem } from "./store-errors.ts";
import { timeOrderedIds } from "./time-ordered-ids.ts";

const transactionLimits = { maxWait: 30_000, timeout: 120_000 };
const attempts = 8;
/** Views that are stored with one statement: it stays short. */
const mostViews = 100;
/** Else an error quotes the code around the call, and what was to be stored. */
const errorFormat = "minimal";

/**
 * Which database a URL names: `postgresql://…`, or a file for SQLite (`file:` may stand before it).
 * Refuses `database-unreachable` for anything else, which would otherwise become a file of a strange name.
 */
export function databaseKind(url: string): DatabaseKind {
  if (/^postgres(ql)?:\/\//.test(url)) return "postgresql";
  if (/^(?!file:)[a-z][a-z0-9+.-]+:/i.test(url))
    refuse("database-unreachable", "The database URL names neither a PostgreSQL server (postgresql://…) nor a file.");
  return "sqlite";
}

/** The file of a SQLite URL. */
export function sqliteFile(url: string): string {
  return url.replace(/^file:/, "");
}

/**
 * Opens the migrated database of that URL. Nothing but transactions and snapshots can be had from it: a write outside
 * a transaction would run inside somebody else's on SQLite, and vanish with it.
 */
export function openStore(url: string): Store {
  return databaseKind(url) === "postgresql" ? openPostgres(url) : openSqlite(sqliteFile(url));
}

function openSqlite(file: string): Store {
  const writer = connectionTo(file, { readonly: false });
  const reader = connectionTo(file, { readonly: true });
  const write = groupCommits(writer.database);
  const read = oneAtATime();
  const snapshot = async <T>(work: Work<T>): Promise<T> => {
    const database = await reader.database();
    database.exec("BEGIN");
    try {
      return await work(reader.client, reader.sql(database));
    } finally {
      // A failure of the disk may have ended it already; what it was is thrown.
      if (database.inTransaction) database.exec("COMMIT");
    }
  };
  return makeStore({
    kind: "sqlite",
    claim: claimsInProcess(),
    writing: (work) => write((database) => work(writer.client, writer.sql(database))),
    reading: (work) => read(() => snapshot(work)),
    close: async () => {
      // What waits is done first; a database that was not used is not made for that.
      await Promise.all([writer.isOpen() ? write(() => Promise.resolve()) : null, read(() => Promise.resolve())]);
      await Promise.all([writer.client.$disconnect(), reader.client.$disconnect()]);
    },
  });
}

/** A connection to a SQLite file, and Prisma on that very connection; it is made when it is first asked for. */
function connectionTo(file: string, options: { readonly: boolean }) {
  const adapter = new LedgerSqlite(file, options);
  const client = new SqliteClient({ errorFormat, adapter });
  let connected: Promise<Database> | null = null;
  const database = () => {
    connected ??= client.$connect().then(
      () => adapter.database,
      (error: unknown) => {
        // The next one tries again.
        connected = null;
        throw error;
      },
    );
    return connected;
  };
  let sql: Sql | null = null;
  return {
    client,
    database,
    isOpen: () => connected !== null,
    sql: (on: Database) => {
      sql ??= sqliteSql(on);
      return sql;
    },
  };
}

function openPostgres(url: string): Store {
  // The generated clients differ only in what one database cannot do, and the schema uses none of it.
  const client = new PostgresClient({
    errorFormat,
    adapter: new PrismaPg({ connectionString: url, max: 12 }),
  }) as unknown as SqliteClient;
  const snapshot = { ...transactionLimits, isolationLevel: "RepeatableRead" as never };
  return makeStore({
    kind: "postgresql",
    claim: claimsOnServer(url),
    writing: (work, options) =>
      client.$transaction((db) => work(db, prismaSql(db)), options?.snapshot ? snapshot : transactionLimits),
    reading: (work) => client.$transaction((db) => work(db, prismaSql(db)), snapshot),
    close: () => client.$disconnect(),
  });
}

type Work<T> = (db: Read["db"], sql: Read["sql"]) => Promise<T>;

interface Connections {
  kind: DatabaseKind;
  claim: Store["claim"];
  writing<T>(work: Work<T>, options?: TxOptions): Promise<T>;
  reading<T>(work: Work<T>): Promise<T>;
  close(): Promise<void>;
}

function makeStore({ kind, claim, writing, reading, close }: Connections): Store {
  const ids = idBlocks((size) =>
    again(() =>
      writing(async (db) => {
        const row = await db.idBlock.upsert({
          where: { name: "entry" },
          create: { name: "entry", next: 1 + size },
          update: { next: { increment: size } },
        });
        return row.next - size;
      }),
    ),
  );
  const reserve = oneAtATime();
  const newAuditId = timeOrderedIds();
  const tx = async <T>(work: (tx: Tx) => Promise<T>, options: TxOptions = {}): Promise<T> =>
    again(async () => {
      const newId = await reserve(() => ids.reserve(options.ids ?? (options.snapshot ? 0 : 16)));
      return writing(
        (db, sql) => work({ kind, db, sql, newId, newAuditId, trace: { touched: [], act: null } }),
        options,
      );
    });
  const views = together<AuditBy>((entries) => tx((opened) => writeAudits(opened, entries), { ids: 0 }), mostViews);
  return {
    kind,
    claim: (id) => again(() => claim(id)),
    close,
    read: (work) => again(() => reading((db, sql) => work({ kind, db, sql }))),
    noteView: (by, view) => views({ by, ...view }),
    tx,
  };
}

/** Tries again, a little later each time, when the database gave up a transaction for the sake of another one. */
async function again<T>(work: () => Promise<T>): Promise<T> {
  for (let attempt = 1; ; attempt++) {
    try {
      return await work();
    } catch (error) {
      if (attempt >= attempts || !isRetryable(error)) throw storeProblem(error);
      await new Promise((resolve) => setTimeout(resolve, attempt * attempt * 5));
    }
  }
}
