import { expect, it } from "vitest";
import { UsageError } from "../../src/commands/command.ts";
import { migrate } from "../../src/commands/migrate.ts";
import { committedMigrations } from "../../src/store/migrate.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { emptyDatabase } from "../databases/empty-database.ts";
import { runCommand } from "./run-command.ts";

onEachDatabase("migrate", (_, kind) => {
  it("says what it applied, and that there is nothing to do the second time", async () => {
    const database = await emptyDatabase(kind);
    const databaseUrl = database.url;
    const names = committedMigrations(kind).map((migration) => migration.name);
    expect(await runCommand(migrate, [], { databaseUrl })).toEqual({
      exitCode: 0,
      out: `Applied: ${names.join(", ")}.\n`,
      err: "",
    });
    expect(await runCommand(migrate, [], { databaseUrl })).toMatchObject({ out: "The database is up to date.\n" });
    await database.drop();
  });

  it("takes no options, and touches nothing when it gets one", async () => {
    const database = await emptyDatabase(kind);
    await expect(runCommand(migrate, ["--force"], { databaseUrl: database.url })).rejects.toThrow(UsageError);
    expect((await runCommand(migrate, [], { databaseUrl: database.url })).out).toContain("Applied");
    await database.drop();
  });
});
