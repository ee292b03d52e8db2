import { existsSync, mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { migrate } from "../../src/store/migrate.ts";
import { databaseKind, openStore, sqliteFile } from "../../src/store/open-store.ts";
import type { Read, Store } from "../../src/store/store.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { gate } from "../databases/gate.ts";
import { faultsOf } from "../databases/refusal.ts";
import { sharedStore } from "../databases/shared-store.ts";

/** Rows whose name begins so, in order. */
function named(read: Read, start: string): Promise<string[]> {
  return read.db.idBlock
    .findMany({ where: { name: { startsWith: start } }, orderBy: { name: "asc" } })
    .then((rows) => rows.map((row) => row.name));
}

function put(store: Store, name: string): Promise<unknown> {
  return store.tx((tx) => tx.db.idBlock.create({ data: { name, next: 1 } }));
}

/** A transaction that has written a row and stays open until it is let go; then it fails. */
function openAndFail(store: Store, name: string): { wrote: Promise<void>; fail: () => void; ended: Promise<unknown> } {
  const wrote = gate();
  const go = gate();
  const ended = store.tx(async (tx) => {
    await tx.db.idBlock.create({ data: { name, next: 1 } });
    wrote.open();
    await go.opened;
    throw new Error("gives up");
  });
  ended.catch(() => undefined);
  return { wrote: wrote.opened, fail: go.open, ended };
}

onEachDatabase("a store", (fresh, kind) => {
  const shared = sharedStore(fresh);

  it("can be entered by transactions and snapshots alone", () => {
    expect(Object.keys(shared.store).sort()).toEqual(["claim", "close", "kind", "noteView", "read", "tx"]);
    expect(shared.store.kind).toBe(kind);
  });

  it("keeps an acknowledged write made while another transaction is open that rolls back", async () => {
    const other = openAndFail(shared.store, "lost inside");
    await other.wrote;
    const beside = put(shared.store, "lost beside");
    if (kind === "postgresql") await beside;
    other.fail();
    await beside;
    await expect(other.ended).rejects.toThrow("gives up");
    expect(await shared.store.read((read) => named(read, "lost"))).toEqual(["lost beside"]);
  });

  it("loses nothing when many write at once and every third gives up", async () => {
    const results = await Promise.allSettled(
      Array.from({ length: 30 }, (_, i) =>
        shared.store.tx(async (tx) => {
          await tx.db.idBlock.create({ data: { name: `many ${String(i).padStart(2, "0")}`, next: i } });
          if (i % 3 === 0) throw new Error("gives up");
        }),
      ),
    );
    expect(results.filter((result) => result.status === "rejected")).toHaveLength(10);
    const kept = Array.from({ length: 30 }, (_, i) => i).filter((i) => i % 3 !== 0);
    const names = kept.map((i) => `many ${String(i).padStart(2, "0")}`);
    expect(await shared.store.read((read) => named(read, "many"))).toEqual(names);
  });

  it("shows a reader nothing of a transaction that is still open, and does not let it wait", async () => {
    const other = openAndFail(shared.store, "dirty");
    await other.wrote;
    expect(await shared.store.read((read) => named(read, "dirty"))).toEqual([]);
    other.fail();
    await expect(other.ended).rejects.toThrow("gives up");
  });

  it("reads from one snapshot: a write between two reads is not seen", async () => {
    const seen = await shared.store.read(async (read) => {
      const before = await named(read, "snap");
      await put(shared.store, "snap");
      return { before, after: await named(read, "snap") };
    });
    expect(seen).toEqual({ before: [], after: [] });
    expect(await shared.store.read((read) => named(read, "snap"))).toEqual(["snap"]);
  });

  it("leaves nothing behind when the work throws, not even what it wrote first", async () => {
    const work = shared.store.tx(async (tx) => {
      await tx.db.idBlock.create({ data: { name: "thrown 1", next: 1 } });
      await tx.db.$executeRawUnsafe(`INSERT INTO "id_block" VALUES ('thrown 2', 1)`);
      throw new Error("no");
    });
    await expect(work).rejects.toThrow("no");
    expect(await shared.store.read((read) => named(read, "thrown"))).toEqual([]);
  });

  it("never hands out an id twice, on PostgreSQL also to two stores of one database at once", async () => {
    // A SQLite file has one owner.
    const second = openStore(shared.url);
    const stores = kind === "postgresql" ? [shared.store, second] : [shared.store, shared.store];
    const draw = (store: Store) => store.tx(async (tx) => Array.from({ length: 400 }, () => tx.newId()), { ids: 400 });
    const drawn = (await Promise.all(Array.from({ length: 12 }, (_, i) => draw(stores[i % 2] ?? second)))).flat();
    await second.close();
    expect(new Set(drawn).size).toBe(4800);
    expect(Math.min(...drawn)).toBeGreaterThan(0);
  });

  it("fails loudly when a transaction draws more ids than it asked for", async () => {
    const draw = shared.store.tx(async (tx) => [tx.newId(), tx.newId(), tx.newId()], { ids: 2 });
    await expect(draw).rejects.toThrow("drew more than the 2 ids");
  });
});

describe("a SQLite file", () => {
  const folder = mkdtempSync(join(tmpdir(), "dwell-open-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it("is not made by opening and closing a store that nobody asked", async () => {
    const file = join(folder, "untouched.sqlite");
    await openStore(file).close();
    expect(existsSync(file)).toBe(false);
  });

  it("is tried anew after it could not be opened", async () => {
    const file = join(folder, "later", "ledger.sqlite");
    const store = openStore(file);
    const put = () => store.tx((tx) => tx.db.idBlock.create({ data: { name: "later", next: 1 } }), { ids: 0 });
    await expect(put()).rejects.toMatchObject({ code: "database-not-writable" });
    mkdirSync(join(folder, "later"));
    await migrate(file);
    expect(await put()).toEqual({ name: "later", next: 1 });
    await store.close();
  });
});

describe("a database URL", () => {
  it("names PostgreSQL, or a file with or without file: before it", () => {
    expect(databaseKind("postgresql://localhost/ledger")).toBe("postgresql");
    expect(databaseKind("postgres://localhost/ledger")).toBe("postgresql");
    for (const url of ["ledger.sqlite", "file:data/ledger.sqlite", "/data/ledger.sqlite", "C:\\data\\ledger.sqlite"])
      expect(databaseKind(url)).toBe("sqlite");
    expect(sqliteFile("file:data/ledger.sqlite")).toBe("data/ledger.sqlite");
  });

  it.each(["mysql://localhost/ledger", "postgres:/localhost/ledger", "sqlite:ledger.sqlite", "http://s3cret@h/x"])(
    "of another kind is refused instead of becoming a file: %s",
    async (url) => {
      const [fault] = await faultsOf(() => openStore(url));
      expect(fault?.code).toBe("database-unreachable");
      expect(fault?.detail).not.toMatch(/s3cret|localhost/);
    },
  );
});
