import { copyFileSync } from "node:fs";
import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import Database from "better-sqlite3";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { PrismaClient } from "../../src/store/generated/sqlite/client.ts";
import { LedgerSqlite } from "../../src/store/sqlite-adapter.ts";
import { freshSqlite, type TestDatabase } from "../databases/databases.ts";

let database: TestDatabase;
beforeAll(async () => {
  database = await freshSqlite();
});
afterAll(() => database.drop());

async function withClient<T>(adapter: PrismaBetterSqlite3, work: (client: PrismaClient) => Promise<T>): Promise<T> {
  const client = new PrismaClient({ adapter, errorFormat: "minimal" });
  try {
    return await work(client);
  } finally {
    await client.$disconnect();
  }
}

async function pragma(client: PrismaClient, name: string): Promise<unknown> {
  const [row] = await client.$queryRawUnsafe<Record<string, number | bigint | string>[]>(`PRAGMA ${name}`);
  const [value] = Object.values(row ?? {});
  return typeof value === "bigint" ? Number(value) : value;
}

describe("the connection that Prisma uses", () => {
  // Expected values: the SQLite manual, page PRAGMA. synchronous 2 is FULL.
  it("keeps a committed record through a power cut and waits for other processes", async () => {
    await withClient(new LedgerSqlite(database.url, { readonly: false }), async (client) => {
      expect(await pragma(client, "journal_mode")).toBe("wal");
      expect(await pragma(client, "synchronous")).toBe(2);
      expect(await pragma(client, "foreign_keys")).toBe(1);
      expect(await pragma(client, "busy_timeout")).toBe(5000);
    });
  });

  it("holds foreign keys", async () => {
    const wardless = { id: 1, wardId: 99, day: 0, patients: 0, catheters: 0, recordedAt: new Date(0), recordedBy: 1 };
    await withClient(new LedgerSqlite(database.url, { readonly: false }), async (client) => {
      await expect(client.dailyCount.create({ data: wardless })).rejects.toMatchObject({ code: "P2003" });
    });
  });

  it("cannot write when it was opened for reading", async () => {
    await withClient(new LedgerSqlite(database.url, { readonly: true }), async (client) => {
      expect(await pragma(client, "journal_mode")).toBe("wal");
      expect(await pragma(client, "busy_timeout")).toBe(5000);
      expect(await client.idBlock.count()).toBe(0);
      await expect(client.idBlock.create({ data: { name: "x", next: 1 } })).rejects.toThrow(/readonly database/);
      await expect(client.$executeRawUnsafe("CREATE TABLE extra (id)")).rejects.toThrow(/readonly database/);
    });
  });

  it("refuses a reader on a file that does not keep a write-ahead log", async () => {
    const other = `${database.url}.rollback-journal`;
    copyFileSync(database.url, other);
    const raw = new Database(other);
    raw.pragma("journal_mode = DELETE");
    raw.close();
    await withClient(new LedgerSqlite(other, { readonly: true }), async (client) => {
      await expect(client.idBlock.count()).rejects.toThrow(/delete mode/);
    });
  });
});

/** Leaves a transaction open, writes beside it through the same client, then rolls the transaction back. */
async function writeBesideRollback(client: PrismaClient): Promise<{ acknowledged: unknown; dirty: number }> {
  let acknowledged: unknown;
  let dirty = 0;
  const transaction = client.$transaction(async (tx) => {
    await tx.idBlock.create({ data: { name: "inside", next: 1 } });
    acknowledged = await client.idBlock.create({ data: { name: "outside", next: 1 } });
    dirty = await client.idBlock.count({ where: { name: "inside" } });
    throw new Error("the transaction gives up");
  });
  await expect(transaction).rejects.toThrow("the transaction gives up");
  return { acknowledged, dirty };
}

describe("the stock driver with one connection", () => {
  // Why the store hands out nothing but transactions: tests/store/open-store.test.ts shows the same there without loss.
  it("loses an acknowledged write made beside a transaction that rolls back, and shows what was never stored", async () => {
    await withClient(new PrismaBetterSqlite3({ url: database.url }), async (client) => {
      const { acknowledged, dirty } = await writeBesideRollback(client);
      expect(acknowledged).toEqual({ name: "outside", next: 1 });
      expect(dirty).toBe(1);
      expect(await client.idBlock.findMany()).toEqual([]);
    });
  });
});
