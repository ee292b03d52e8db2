import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openStore } from "../../src/store/open-store.ts";
import type { Store, Tx } from "../../src/store/store.ts";
import { freshPostgres, type TestDatabase } from "../databases/databases.ts";
import { gate } from "../databases/gate.ts";

// PostgreSQL alone: a SQLite file has one writer, whose transactions wait for each other in the store.
let database: TestDatabase;
let store: Store;
beforeAll(async () => {
  database = await freshPostgres();
  store = openStore(database.url);
});
afterAll(async () => {
  await store.close();
  await database.drop();
});

function put(tx: Tx, name: string, next = 0): Promise<unknown> {
  return tx.db.idBlock.create({ data: { name, next } });
}

function addOne(tx: Tx, name: string): Promise<unknown> {
  return tx.db.idBlock.update({ where: { name }, data: { next: { increment: 1 } } });
}

async function nextOf(name: string): Promise<number | undefined> {
  return (await store.read((read) => read.db.idBlock.findUnique({ where: { name } })))?.next;
}

describe("a transaction that PostgreSQL gives up for another one", () => {
  it("is run again after a deadlock, so that both are stored", async () => {
    await store.tx(async (tx) => {
      await put(tx, "left");
      await put(tx, "right");
    });
    const [first, second] = [gate(), gate()];
    let runs = 0;
    const crossing = (names: readonly [string, string], mine: typeof first, other: typeof first) =>
      store.tx(async (tx) => {
        runs++;
        await addOne(tx, names[0]);
        mine.open();
        await other.opened;
        await addOne(tx, names[1]);
      });
    await Promise.all([crossing(["left", "right"], first, second), crossing(["right", "left"], second, first)]);
    expect(runs).toBe(3);
    expect([await nextOf("left"), await nextOf("right")]).toEqual([2, 2]);
  });

  it("is run again when somebody took a unique value after it had looked, and then sees it", async () => {
    const [first, second] = [gate(), gate()];
    const claim = (mine: typeof first, other: typeof first) =>
      store.tx(async (tx) => {
        const taken = (await tx.db.idBlock.count({ where: { name: "claimed" } })) > 0;
        mine.open();
        await other.opened;
        if (taken) return "taken";
        await put(tx, "claimed");
        return "mine";
      });
    const answers = await Promise.all([claim(first, second), claim(second, first)]);
    expect(answers.sort()).toEqual(["mine", "taken"]);
  });

  it("is given up with the database's own error when running it again cannot help", async () => {
    await store.tx((tx) => put(tx, "twice"));
    let runs = 0;
    const again = store.tx((tx) => {
      runs++;
      return put(tx, "twice");
    });
    await expect(again).rejects.toMatchObject({ code: "P2002" });
    expect(runs).toBe(8);
  });

  it("is not run again for an error of its own", async () => {
    let runs = 0;
    const broken = store.tx(async () => {
      runs++;
      throw new Error("a bug");
    });
    await expect(broken).rejects.toThrow("a bug");
    expect(runs).toBe(1);
  });
});

describe("a transaction that asks for a snapshot", () => {
  async function readTwice(options: { snapshot?: boolean }, name: string): Promise<number[]> {
    return store.tx(async (tx) => {
      const before = await tx.db.idBlock.count({ where: { name } });
      await store.tx((other) => put(other, name));
      const after = await tx.db.idBlock.count({ where: { name } });
      await put(tx, `${name} was read`);
      return [before, after];
    }, options);
  }

  it("sees one state from its first read on, and can write", async () => {
    expect(await readTwice({ snapshot: true }, "snapshot")).toEqual([0, 0]);
    expect(await nextOf("snapshot was read")).toBe(0);
  });

  it("is needed for that: without it, each read sees what was stored by then", async () => {
    expect(await readTwice({}, "none")).toEqual([0, 1]);
  });
});
