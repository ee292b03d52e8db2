import { afterAll, beforeAll, expect, it } from "vitest";
import { CataloguePostgres, schemaDiff } from "../../scripts/schema-diff.ts";
import { LedgerSqlite } from "../../src/store/sqlite-adapter.ts";
import { onEachDatabase, type TestDatabase } from "../databases/databases.ts";
import { rawQuery } from "../databases/raw-query.ts";

onEachDatabase("the tables that our migrations make", (fresh) => {
  let database: TestDatabase;
  beforeAll(async () => {
    database = await fresh();
  });
  afterAll(() => database.drop());

  function difference(): Promise<string> {
    return database.kind === "sqlite"
      ? schemaDiff("sqlite", new LedgerSqlite(database.url, { readonly: false }))
      : schemaDiff("postgresql", new CataloguePostgres({ connectionString: database.url }));
  }

  it("are those of prisma/schema.prisma", async () => {
    expect(await difference()).toBe("");
  });

  it("would be told from others: an extra column is found, and so is a missing index", async () => {
    await rawQuery(database.url, "ALTER TABLE patient ADD COLUMN planted TEXT");
    expect(await difference()).toMatch(/new_patient|DROP COLUMN "planted"/);
    await rawQuery(database.url, "ALTER TABLE patient DROP COLUMN planted");
    expect(await difference()).toBe("");
    await rawQuery(database.url, "DROP INDEX patient_survivor_id_idx");
    expect(await difference()).toContain("patient_survivor_id_idx");
  });
});
