import { spawn } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import Database from "better-sqlite3";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { committedMigrations, migrate } from "../../src/store/migrate.ts";
import { migrateSqlite } from "../../src/store/migrate-sqlite.ts";
import { planted } from "../databases/planted-migration.ts";
import { tableNames } from "../databases/raw-query.ts";
import { faultsOf } from "../databases/refusal.ts";
import { canMount, howFull, mountSmallDisk } from "../databases/small-disk.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "dwell-migrate-"));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const program = fileURLToPath(new URL("../databases/migrate-once.ts", import.meta.url));

/** Starts a process that migrates; resolves `started` when it is about to, `applied` with what it applied. */
function migrateInProcess(url: string): { started: Promise<void>; applied: Promise<string[]> } {
  const child = spawn(process.execPath, ["--import", "tsx", program, url], { stdio: ["ignore", "pipe", "pipe"] });
  let out = "";
  let errors = "";
  child.stderr.on("data", (text) => (errors += text));
  const started = new Promise<void>((resolve) => {
    child.stdout.on("data", (text) => {
      out += text;
      resolve();
    });
  });
  const applied = new Promise<string[]>((resolve, reject) => {
    child.on("close", (code) =>
      code === 0 ? resolve(JSON.parse(out.split("\n")[1] ?? "")) : reject(new Error(errors)),
    );
  });
  return { started, applied };
}

describe("a SQLite file", () => {
  it("is made with its folders where there is none", async () => {
    const file = join(folder, "a/b/ledger.sqlite");
    expect(await migrate(`file:${file}`)).toEqual(committedMigrations("sqlite").map((m) => m.name));
    expect(existsSync(file)).toBe(true);
  });

  it("is migrated once when two processes start together", async () => {
    const url = join(folder, "ledger.sqlite");
    const holder = new Database(url);
    holder.exec("BEGIN IMMEDIATE");
    const both = [migrateInProcess(url), migrateInProcess(url)];
    for (const { started } of both) await started;
    await new Promise((resolve) => setTimeout(resolve, 300));
    holder.exec("COMMIT");
    holder.close();
    const applied = (await Promise.all(both.map((one) => one.applied))).flat();
    // Each takes the next that the other has not: who applied which is chance.
    expect(applied.toSorted()).toEqual(committedMigrations("sqlite").map((m) => m.name));
  });

  it("is refused when a migration would leave a row without its parent, and stays as it was", async () => {
    const file = join(folder, "ledger.sqlite");
    const tables = planted("0001", "CREATE TABLE a (id INTEGER PRIMARY KEY); CREATE TABLE b (a_id REFERENCES a(id))");
    migrateSqlite(file, [tables]);
    const orphan = planted("0002", "CREATE TABLE c (id INTEGER); INSERT INTO b VALUES (7)");
    expect(() => migrateSqlite(file, [tables, orphan])).toThrow("0002 leaves 1 rows without their parent");
    expect(await tableNames(file)).toEqual(["a", "b"]);
  });
});

describe("a path that cannot hold a database is told in one sentence", () => {
  it("when the folder cannot be written", async () => {
    // A folder that nobody may write in, not even the administrator.
    const [fault, ...more] = await faultsOf(() => migrate("/proc/self/ledger.sqlite"));
    expect(fault).toMatchObject({ code: "database-not-writable", detail: expect.stringMatching(/^The [^.]*\.$/) });
    expect(more).toEqual([]);
  });

  it("when the folder cannot be made", async () => {
    writeFileSync(join(folder, "file"), "");
    const [fault] = await faultsOf(() => migrate(join(folder, "file/inner/ledger.sqlite")));
    expect(fault?.code).toBe("database-not-writable");
  });

  it("when it is a folder", async () => {
    mkdirSync(join(folder, "ledger.sqlite"));
    const [fault] = await faultsOf(() => migrate(join(folder, "ledger.sqlite")));
    expect(fault?.code).toBe("database-not-writable");
  });

  it("when it is some other file, which stays as it is", async () => {
    const file = join(folder, "letter.txt");
    const text = "Dear colleague, this is no database. ".repeat(50);
    writeFileSync(file, text);
    const [fault] = await faultsOf(() => migrate(file));
    expect(fault?.code).toBe("database-unreadable");
    expect(readFileSync(file, "utf8")).toBe(text);
  });

  it("when another program does not let go of it", async () => {
    const file = join(folder, "ledger.sqlite");
    await migrate(file);
    const other = new Database(file);
    other.exec("BEGIN EXCLUSIVE");
    expect(() => migrateSqlite(file, committedMigrations("sqlite"), 50)).toThrow(/Another program/);
    other.exec("ROLLBACK");
    other.close();
    expect(await migrate(file)).toEqual([]);
  });

  it(`when the disk is full, ${howFull}: nothing of the migration stays`, async () => {
    const disk = mountSmallDisk(300);
    const file = join(disk?.folder ?? folder, "ledger.sqlite");
    const limit = canMount ? "" : "PRAGMA max_page_count = 20;";
    const small = planted("0001", "CREATE TABLE small (id INTEGER)");
    const big = planted("0002", `${limit} CREATE TABLE big (x); INSERT INTO big VALUES (zeroblob(10000000))`);
    try {
      migrateSqlite(file, [small]);
      const [fault] = await faultsOf(() => migrateSqlite(file, [small, big]));
      expect(fault?.code).toBe("disk-full");
      expect(await tableNames(file)).toEqual(["small"]);
      expect(migrateSqlite(file, [small])).toEqual([]);
    } finally {
      disk?.remove();
    }
  });
});
