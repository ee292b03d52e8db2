import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { groupCommits } from "../../src/store/group-commits.ts";
import { gate } from "../databases/gate.ts";

let folder: string;
let connection: Database.Database;
let other: Database.Database;
let commits: number;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "dwell-groups-"));
  connection = new Database(join(folder, "group.sqlite"));
  connection.pragma("journal_mode = WAL");
  connection.exec("CREATE TABLE row (name TEXT PRIMARY KEY)");
  other = new Database(connection.name, { readonly: true });
  commits = 0;
  const exec = connection.exec.bind(connection);
  connection.exec = (text) => {
    if (text === "COMMIT") commits += 1;
    return exec(text);
  };
});
afterEach(() => {
  connection.close();
  other.close();
  rmSync(folder, { recursive: true, force: true });
});

/** What anybody else sees: what is on disk. */
const stored = () => other.prepare("SELECT name FROM row ORDER BY name").pluck().all();
const put = (name: string) => connection.prepare("INSERT INTO row VALUES (?)").run(name);

describe("transactions that are committed together", () => {
  it("answer when they are on disk, one commit for all that waited", async () => {
    const transact = groupCommits(async () => connection);
    const [begun, hold] = [gate(), gate()];
    const first = transact(async () => {
      put("a");
      begun.open();
      await hold.opened;
    });
    await begun.opened;
    const names = ["b", "c", "d"];
    const more = names.map((name) => transact(async () => put(name)).then(() => expect(stored()).toContain(name)));
    await new Promise((resolve) => setTimeout(resolve, 10));
    expect(stored()).toEqual([]);
    hold.open();
    await Promise.all([first, ...more]);
    expect(stored()).toEqual(["a", "b", "c", "d"]);
    expect(commits).toBe(2);
  });

  it("leave nothing of one that fails, and take nobody along", async () => {
    const transact = groupCommits(async () => connection);
    const outcomes = await Promise.allSettled([
      transact(async () => put("a")),
      transact(async () => {
        put("b");
        throw new Error("refused");
      }),
      transact(async () => put("c")),
    ]);
    expect(outcomes.map(({ status }) => status)).toEqual(["fulfilled", "rejected", "fulfilled"]);
    expect(stored()).toEqual(["a", "c"]);
    expect(commits).toBe(1);
  });

  it("see what was written before them, and refuse by it only once that is on disk", async () => {
    const transact = groupCommits(async () => connection);
    const both = ["first", "second"].map((who) =>
      transact(async () => {
        if (connection.prepare("SELECT 1 FROM row WHERE name = 'key'").get()) throw new Error(`${who} came too late`);
        put("key");
      }).catch((error: Error) => {
        expect(stored()).toEqual(["key"]);
        return error.message;
      }),
    );
    expect(await Promise.all(both)).toEqual([undefined, "second came too late"]);
    expect(commits).toBe(1);
  });

  it("all fail when the commit does, and nothing of them is stored", async () => {
    const transact = groupCommits(async () => connection);
    connection.exec("CREATE TABLE owned (name TEXT REFERENCES row DEFERRABLE INITIALLY DEFERRED)");
    connection.pragma("foreign_keys = ON");
    const outcomes = await Promise.allSettled([
      transact(async () => put("a")),
      transact(async () => connection.prepare("INSERT INTO owned VALUES ('nobody')").run()),
      transact(async () => {
        throw new Error("refused");
      }),
    ]);
    const reasons = outcomes.map((one) => (one.status === "rejected" ? String(one.reason.message) : "stored"));
    expect(reasons).toEqual(Array(3).fill("FOREIGN KEY constraint failed"));
    expect(stored()).toEqual([]);
    await transact(async () => put("later"));
    expect(stored()).toEqual(["later"]);
  });

  it("all fail when SQLite gives up the whole transaction", async () => {
    const transact = groupCommits(async () => connection);
    const outcomes = await Promise.allSettled([
      transact(async () => put("a")),
      transact(async () => {
        // As a full disk does: the statement fails and the transaction is gone.
        connection.prepare("INSERT OR ROLLBACK INTO row VALUES ('a')").run();
      }),
      transact(async () => put("c")),
    ]);
    expect(outcomes.map(({ status }) => status)).toEqual(["rejected", "rejected", "rejected"]);
    expect(stored()).toEqual([]);
    await transact(async () => put("later"));
    expect(stored()).toEqual(["later"]);
  });

  it("are at most sixteen, so that the first need not wait for everybody", async () => {
    const transact = groupCommits(async () => connection);
    await Promise.all(Array.from({ length: 40 }, (_, i) => transact(async () => put(String(i)))));
    expect(stored()).toHaveLength(40);
    expect(commits).toBe(3);
  });

  it("let the event loop turn between two of them", async () => {
    const transact = groupCommits(async () => connection);
    let turns = 0;
    let counting = true;
    const count = () => {
      turns += 1;
      if (counting) setImmediate(count);
    };
    setImmediate(count);
    const seen = await Promise.all(Array.from({ length: 10 }, () => transact(async () => turns)));
    counting = false;
    expect(new Set(seen).size).toBe(10);
  });
});
