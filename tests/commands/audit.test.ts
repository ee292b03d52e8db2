import { beforeAll, expect, it } from "vitest";
import { audit } from "../../src/commands/audit.ts";
import { openStore } from "../../src/store/open-store.ts";
import { sealAudit } from "../../src/usecases/audit/seal-audit.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase, type TestDatabase } from "../databases/databases.ts";
import { rawQuery } from "../databases/raw-query.ts";
import { type CommandRun, runCommand } from "./run-command.ts";

onEachDatabase("audit verify", (fresh) => {
  let database: TestDatabase;
  let entries: number;
  const verify = (...args: string[]): Promise<CommandRun> =>
    runCommand(audit, ["verify", ...args], { databaseUrl: database.url });
  const change = (sql: string) => rawQuery(database.url, sql);
  const headOf = ({ out }: CommandRun) => /link is (\S+);/.exec(out)?.[1] ?? "";

  beforeAll(async () => {
    database = await fresh();
    const store = openStore(database.url);
    const bay = await alderBay(store);
    await bay.stay("P1", "2024-03-01 10:00", "2024-03-05 10:00");
    await bay.stay("P2", "2024-03-01 10:00", "2024-03-05 10:00");
    entries = await sealAudit(store);
    await bay.admit("P3", "2024-03-06 10:00");
    await store.close();
    return () => database.drop();
  });

  it("says that the chain is whole, what waits, and the last link, which is found again", async () => {
    const run = await verify();
    expect(run).toMatchObject({ exitCode: 0, err: "" });
    expect(run.out).toContain(`${entries} entries sealed, 1 waiting. The chain is whole.`);
    expect(headOf(run)).toMatch(new RegExp(`^${entries}:[0-9a-f]{64}$`));
    expect((await verify("--head", headOf(run))).exitCode).toBe(0);
  });

  it.each([
    ["who did it", "UPDATE audit_entry SET person_id = person_id + 1 WHERE seal_number = 3", 3],
    ["what was done", "UPDATE audit_entry SET action = 'void-stay' WHERE seal_number = 4", 4],
    ["its details", "UPDATE audit_entry SET details = '{}' WHERE seal_number = 4", 4],
    ["its seal", "UPDATE audit_entry SET seal_hash = 'x' WHERE seal_number = 5", 5],
    ["its place", "UPDATE audit_entry SET seal_number = 999 WHERE seal_number = 5", 5],
  ])("finds an entry of which somebody changed %s", async (_, sql, number) => {
    const row = `SELECT person_id, action, details, seal_hash, id FROM audit_entry WHERE seal_number = ${number}`;
    const [before] = await change(row);
    await change(sql);
    const run = await verify();
    expect(run.exitCode).toBe(1);
    expect(run.out).toContain(`The chain is NOT whole: entry ${number}.`);
    const set = `person_id = ${before?.person_id}, action = '${before?.action}', details = '${before?.details}'`;
    const seal = `seal_hash = '${before?.seal_hash}', seal_number = ${number}`;
    await change(`UPDATE audit_entry SET ${set}, ${seal} WHERE id = '${before?.id}'`);
    expect((await verify()).exitCode).toBe(0);
  });

  it("finds an entry about whom somebody changed, and one that was taken out", async () => {
    const about = "SELECT audit_id, patient_id FROM audit_patient ORDER BY audit_id";
    const [first, , last] = await change(about);
    const at = `audit_id = '${first?.audit_id}'`;
    await change(`UPDATE audit_patient SET patient_id = ${last?.patient_id} WHERE ${at}`);
    expect((await verify()).exitCode).toBe(1);
    await change(`UPDATE audit_patient SET patient_id = ${first?.patient_id} WHERE ${at}`);
    expect((await verify()).exitCode).toBe(0);
    const [{ id: gone } = {}] = await change("SELECT id FROM audit_entry WHERE seal_number = 2");
    await change(`UPDATE audit_entry SET seal_number = NULL WHERE id = '${gone}'`);
    const run = await verify();
    expect([run.exitCode, run.out]).toEqual([1, expect.stringContaining("entry 2. This entry is missing.")]);
    await change(`UPDATE audit_entry SET seal_number = 2 WHERE id = '${gone}'`);
  });

  it("finds a tail that was cut off when a link was written down elsewhere, and only then", async () => {
    const head = headOf(await verify());
    await change(`UPDATE audit_entry SET seal_number = NULL WHERE seal_number = ${entries}`);
    expect((await verify()).exitCode).toBe(0);
    const run = await verify("--head", head);
    expect([run.exitCode, run.out]).toEqual([1, expect.stringContaining("does not have the link")]);
  });

  it.each([[["seal"]], [["verify", "--head", "7"]], [[]]])("is refused %j", async (args) => {
    await expect(runCommand(audit, args, { databaseUrl: database.url })).rejects.toThrow(/Say verify|--head takes/);
  });
});
