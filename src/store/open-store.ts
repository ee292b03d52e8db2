import { PrismaPg } from "@prisma/adapter-pg";
import { refuse } from "../../shared/problems.ts";
import { type AuditBy, writeAudits } from "./audit.ts";
import { claimsInProcess, claimsOnServer } from "./claims.ts";
import { PrismaClient as PostgresClient } from "./generated/postgresql/client.ts";
import { PrismaClient as SqliteClient } from "./generated/sqlite/client.ts";
import { idBlocks } from "./id-blocks.ts";
import { oneAtATime, together } from "./queue.ts";
import { LedgerSqlite } from "./sqlite-adapter.ts";
import type { DatabaseKind, Read, Store, Tx, TxOptions } from "./store.ts";
import { isRetryable, storeProblem } from "./store-errors.ts";

const transactionLimits = { maxWait: 30_000, timeout: 120_000 };
const attempts = 8;
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
  const writer = new SqliteClient({ errorFormat, adapter: new LedgerSqlite(file, { readonly: false }) });
  const reader = new SqliteClient({ errorFormat, adapter: new LedgerSqlite(file, { readonly: true }) });
  const write = oneAtATime();
  const read = oneAtATime();
  return makeStore({
    kind: "sqlite",
    claim: claimsInProcess(),
    writing: (work) => write(() => writer.$transaction(work, transactionLimits)),
    reading: (work) => read(() => reader.$transaction(work, transactionLimits)),
    close: async () => {
      await Promise.all([write(() => writer.$disconnect()), read(() => reader.$disconnect())]);
    },
  });
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
    writing: (work, options) => client.$transaction(work, options?.snapshot ? snapshot : transactionLimits),
    reading: (work) => client.$transaction(work, snapshot),
    close: () => client.$disconnect(),
  });
}

type Work<T> = (db: Read["db"]) => Promise<T>;

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
  const tx = async <T>(work: (tx: Tx) => Promise<T>, options: TxOptions = {}): Promise<T> =>
    again(async () => {
      const newId = await reserve(() => ids.reserve(options.ids ?? (options.snapshot ? 0 : 16)));
      return writing((db) => work({ kind, db, newId, trace: { touched: [], act: null } }), options);
    });
  const views = together<AuditBy>((entries) => tx((opened) => writeAudits(opened, entries), { ids: 0 }));
  return {
    kind,
    claim: (id) => again(() => claim(id)),
    close,
    read: (work) => again(() => reading((db) => work({ kind, db }))),
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
