import { createServer } from "node:net";
import { describe, expect, it } from "vitest";
import type { CensusTime } from "../../shared/day.ts";
import { ledger } from "../../src/commands/ledger.ts";
import { serve } from "../../src/commands/serve.ts";
import { openStore } from "../../src/store/open-store.ts";
import { setUpFacility } from "../../src/usecases/settings/set-up-facility.ts";
import { freshSqlite, onEachDatabase } from "../databases/databases.ts";
import { emptyDatabase } from "../databases/empty-database.ts";
import { gate } from "../databases/gate.ts";
import { faultsOf } from "../databases/refusal.ts";
import { type CommandRun, runCommand } from "./run-command.ts";

const quiet = { DWELL_PORT: "0", DWELL_LOG_LEVEL: "silent", DWELL_FACILITY_NAME: "Alder Bay" };

/** Serves a database on a free port while `use` asks it something; resolves to how the command ended. */
async function serving(
  databaseUrl: string,
  { args = ["--empty"], settings = {} }: { args?: string[]; settings?: Record<string, string> },
  use: (address: string) => Promise<void>,
): Promise<CommandRun> {
  const stop = gate();
  let say = (_address: string) => {};
  const said = new Promise<string>((resolve) => {
    say = resolve;
  });
  const onOut = (text: string) => say(/http:\/\/\S+/.exec(text)?.[0] ?? "no address was said");
  const ended = runCommand(serve, args, {
    ...{ databaseUrl, onOut, stopped: stop.opened },
    settings: { ...quiet, ...settings },
  });
  try {
    await use(await Promise.race([said, ended.then(() => "it ended before it said an address")]));
  } finally {
    stop.open();
  }
  return ended;
}

const answer = async (address: string) => (await fetch(address)).json();

onEachDatabase("serve", (_, kind) => {
  it("makes the tables and an empty record, answers, and ends cleanly when it is told to stop", async () => {
    const database = await emptyDatabase(kind);
    let address = "";
    const run = await serving(database.url, {}, async (at) => {
      address = at;
      const facility = { name: "Alder Bay", zone: "America/New_York", demo: false };
      expect(await answer(`${at}/api/v1/facility`)).toMatchObject(facility);
      expect(await answer(`${at}/api/v1/wards`)).toMatchObject({ wards: [] });
    });
    expect(run).toMatchObject({ exitCode: 0, out: `Dwell Ledger is at ${address}\n` });
    expect(run.err).toMatch(/^Setting up "Alder Bay": time zone America\/New_York, daily census at 00:00\. [^\n]+\n$/);
    expect(address).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
    await expect(fetch(address)).rejects.toThrow("fetch failed");
    // Everything was given back: another command may have the database now.
    expect(await runCommand(ledger, ["verify"], { databaseUrl: database.url })).toMatchObject({ exitCode: 0 });
    await database.drop();
  });

  it("keeps the facility that is there at the next start, whatever the settings say", async () => {
    const database = await emptyDatabase(kind);
    await serving(database.url, {}, async () => undefined);
    const settings = { DWELL_FACILITY_NAME: "Another" };
    await serving(database.url, { settings }, async (at) => {
      expect(await answer(`${at}/api/v1/facility`)).toMatchObject({ name: "Alder Bay" });
    });
    await database.drop();
  });
});

describe("serve", () => {
  it("says that it is the demo, and does not load one that is there", async () => {
    const database = await freshSqlite();
    const store = openStore(database.url);
    const person = { name: "Robin Vale", roles: ["prevention"] } as const;
    const facility = { name: "Alder Bay Hospital", zone: "UTC", censusTime: "00:00" as CensusTime, demo: true, person };
    await setUpFacility({ store, now: Date.UTC(2026, 0, 1) }, facility);
    await store.close();
    const run = await serving(database.url, { args: [] }, async (at) => {
      expect(await answer(`${at}/api/v1/wards`)).toMatchObject({ wards: [] });
      expect(await answer(`${at}/api/v1/facility`)).toMatchObject({ demo: true });
    });
    expect(run).toMatchObject({ exitCode: 0, err: "" });
    expect(run.out).toMatch(/^Dwell Ledger with the demo hospital is at http/);
    // Who wants an empty record does not find the invented patients in it.
    const empty = () => runCommand(serve, ["--empty"], { databaseUrl: database.url, settings: quiet });
    expect((await faultsOf(empty)).map((fault) => fault.code)).toEqual(["demo-record"]);
    await database.drop();
  });

  it("refuses a SQLite file that another one has, which goes on", async () => {
    const database = await freshSqlite();
    await serving(database.url, {}, async (at) => {
      for (const [command, args] of [
        [serve, ["--empty"]],
        [ledger, ["verify"]],
      ] as const) {
        const [fault] = await faultsOf(() => runCommand(command, args, { databaseUrl: database.url, settings: quiet }));
        expect(fault?.code).toBe("database-in-use");
      }
      expect(await answer(`${at}/api/v1/facility`)).toMatchObject({ name: "Alder Bay" });
    });
    await database.drop();
  });

  it("refuses a port that is taken, and gives the database back", async () => {
    const database = await freshSqlite();
    const other = createServer();
    await new Promise<void>((resolve) => other.listen(0, "127.0.0.1", resolve));
    const taken = other.address();
    const port = taken !== null && typeof taken === "object" ? `${taken.port}` : "";
    const settings = { ...quiet, DWELL_PORT: port };
    const [fault] = await faultsOf(() => runCommand(serve, ["--empty"], { databaseUrl: database.url, settings }));
    expect(fault?.code).toBe("port-in-use");
    await new Promise((resolve) => other.close(resolve));
    const verified = await runCommand(ledger, ["verify"], { databaseUrl: database.url });
    expect(verified.exitCode).toBe(0);
    await database.drop();
  });

  it("takes no other options", async () => {
    await expect(runCommand(serve, ["--port", "80"])).rejects.toThrow("Unknown option '--port'");
  });
});
