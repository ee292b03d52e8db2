import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { appliedRow, committedMigrations, migrate, pendingMigrations } from "../../src/store/migrate.ts";
import { onEachDatabase, type TestDatabase } from "../databases/databases.ts";
import { emptyDatabase } from "../databases/empty-database.ts";
import { applyPlanted, planted } from "../databases/planted-migration.ts";
import { rawQuery, tableNames } from "../databases/raw-query.ts";
import { faultsOf } from "../databases/refusal.ts";

const first = planted("0001_first", "CREATE TABLE parent (id INTEGER PRIMARY KEY); INSERT INTO parent VALUES (1)");
const second = planted("0002_second", "ALTER TABLE parent ADD COLUMN name TEXT; CREATE TABLE child (id INTEGER)");
const broken = planted("0002_second", "CREATE TABLE half (id INTEGER); INSERT INTO parent VALUES (2); SELECT nonsense");

onEachDatabase("migrating", (_fresh, kind) => {
  let database: TestDatabase;
  beforeEach(async () => {
    database = await emptyDatabase(kind);
  });
  afterEach(() => database.drop());

  it("makes every table of a fresh database, and the second run applies nothing", async () => {
    const names = committedMigrations(kind).map((m) => m.name);
    expect(await migrate(database.url)).toEqual(names);
    const tables = await tableNames(database.url);
    expect(tables).toContain("patient_day");
    expect(tables.length).toBeGreaterThan(20);
    expect(await migrate(database.url)).toEqual([]);
    expect(await tableNames(database.url)).toEqual(tables);
  });

  it("writes down what it applied as Prisma's own tool does", async () => {
    await migrate(database.url);
    const rows = await rawQuery(database.url, "SELECT * FROM _prisma_migrations ORDER BY migration_name");
    expect(rows).toHaveLength(committedMigrations(kind).length);
    expect(rows[0]).toMatchObject({ logs: null, rolled_back_at: null, applied_steps_count: 1 });
    expect(rows[0]?.checksum).toMatch(/^[0-9a-f]{64}$/);
    expect(rows[0]?.id).toMatch(/^[0-9a-f-]{36}$/);
    expect(rows[0]?.finished_at).not.toBeNull();
  });

  it("applies what is missing, in the order of the list", async () => {
    expect(await applyPlanted(database, [first])).toEqual(["0001_first"]);
    expect(await applyPlanted(database, [first, second])).toEqual(["0002_second"]);
    expect(await tableNames(database.url)).toEqual(["child", "parent"]);
  });

  it("refuses a database that a newer version wrote, by the name of what it does not know", async () => {
    await applyPlanted(database, [first, second]);
    const [fault] = await faultsOf(() => applyPlanted(database, [first]));
    expect(fault).toMatchObject({ code: "database-newer", detail: expect.stringContaining("0002_second") });
    const [committed] = await faultsOf(() => migrate(database.url));
    expect(committed).toMatchObject({ code: "database-newer", detail: expect.stringContaining("0001_first") });
    expect(await tableNames(database.url)).toEqual(["child", "parent"]);
  });

  it("refuses a database whose migration is not the committed one, and applies nothing further", async () => {
    await applyPlanted(database, [first]);
    const edited = planted("0001_first", `${first.sql} -- edited`);
    const [fault] = await faultsOf(() => applyPlanted(database, [edited, second]));
    expect(fault).toMatchObject({ code: "database-edited", detail: expect.stringContaining("0001_first") });
    expect(await tableNames(database.url)).toEqual(["parent"]);
  });

  it("refuses a database in which a migration of another tool broke off", async () => {
    await applyPlanted(database, [first]);
    await rawQuery(database.url, "UPDATE _prisma_migrations SET finished_at = NULL");
    const [fault] = await faultsOf(() => applyPlanted(database, [first]));
    expect(fault).toMatchObject({ code: "database-edited", detail: expect.stringContaining("0001_first") });
  });

  it("leaves nothing of a migration that fails, keeps the ones before it, and goes on once it is mended", async () => {
    await expect(applyPlanted(database, [first, broken])).rejects.toThrow("nonsense");
    expect(await tableNames(database.url)).toEqual(["parent"]);
    expect(await rawQuery(database.url, "SELECT id FROM parent")).toEqual([{ id: 1 }]);
    expect(await rawQuery(database.url, "SELECT migration_name FROM _prisma_migrations")).toEqual([
      { migration_name: "0001_first" },
    ]);
    expect(await applyPlanted(database, [first, second])).toEqual(["0002_second"]);
  });
});

describe("the migrations still to apply", () => {
  const rowOf = (m: typeof first, finished = true) => ({ ...appliedRow(m), finished });

  it("are those that the database does not have, in order", () => {
    expect(pendingMigrations([first, second], [])).toEqual([first, second]);
    expect(pendingMigrations([first, second], [rowOf(second)])).toEqual([first]);
    expect(pendingMigrations([first, second], [rowOf(second), rowOf(first)])).toEqual([]);
  });

  it("have committed names in order, and a checksum that the file gives", () => {
    for (const kind of ["sqlite", "postgresql"] as const) {
      const migrations = committedMigrations(kind);
      expect(migrations.length).toBeGreaterThan(0);
      expect(migrations.map((m) => m.name)).toEqual(migrations.map((m) => m.name).toSorted());
      for (const m of migrations) expect(planted(m.name, m.sql)).toEqual(m);
    }
  });
});
