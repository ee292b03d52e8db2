import { describe, expect, it } from "vitest";
import type { CensusTime } from "../../shared/day.ts";
import { UsageError } from "../../src/commands/command.ts";
import { importFolder } from "../../src/commands/import.ts";
import { ledger } from "../../src/commands/ledger.ts";
import { openStore } from "../../src/store/open-store.ts";
import { setUpFacility } from "../../src/usecases/settings/set-up-facility.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { faultsOf, refusalOf } from "../databases/refusal.ts";
import { runCommand, withFolder } from "./run-command.ts";

const files = {
  "wards.csv": "ward,name,setting\n3E,3 East Medical,inpatient\nED,Emergency,outpatient\n",
  "stays.csv": "stay,patient,birth_date,admitted,discharged\nS1,P1,1950-02-03,2026-11-01T08:00,2026-11-06T10:00\n",
  "moves.csv":
    "stay,patient,ward,from,to,absence\nS1,P1,ED,2026-11-01T08:00,2026-11-01T12:00,\n" +
    "S1,P1,3E,2026-11-01T12:00,2026-11-03T09:00,procedure\nS1,P1,3E,2026-11-04T01:00,2026-11-06T10:00,\n" +
    "S2,P2,ICU,2026-11-02T00:00,,\n",
  "catheters.csv": "stay,inserted,removed\nS1,2026-11-02T09:00,2026-11-05T09:00\n",
  "daily-counts.csv": "ward,day,patients,catheters\n3E,2026-11-02,1,0\n",
};

onEachDatabase("import", (fresh) => {
  it("stores a folder once, whatever number of times it is imported", async () => {
    const database = await fresh();
    await withFolder(files, async (folder) => {
      const run = (args: string[] = []) =>
        runCommand(importFolder, ["--data", folder, ...args], { databaseUrl: database.url });
      const dry = await run(["--dry-run"]);
      expect(dry).toMatchObject({ exitCode: 0 });
      expect(dry.out).toContain("This was a dry run: nothing was stored.");
      const first = await run();
      expect(first.exitCode).toBe(0);
      expect(first.out).toBe("Lines: 8 accepted, 1 accepted and marked, 0 seen before, 0 refused.\nStored.\n");
      const second = await run();
      expect(second.exitCode).toBe(0);
      expect(second.out).toBe(
        "Lines: 0 accepted, 0 accepted and marked, 9 seen before, 0 refused.\nNothing new: nothing was changed.\n",
      );
      const verified = await runCommand(ledger, ["verify"], { databaseUrl: database.url });
      // 3E at midnight: 2, 3 November, the 4th by the bed held for the procedure, 5 and 6; ICU has no setting.
      expect(verified).toMatchObject({ exitCode: 0, out: "2 patients, 5 rows of the ledger, 0 differences.\n" });
    });
    await database.drop();
  });

  it("stores nothing of a folder with one refused line, and the rest of it when that is set aside", async () => {
    const database = await fresh();
    const overlapping = `${files["moves.csv"]}S1,P1,3E,2026-11-05T01:00,2026-11-05T02:00,\n`;
    await withFolder({ ...files, "moves.csv": overlapping }, async (folder) => {
      const run = (args: string[] = []) =>
        runCommand(importFolder, ["--data", folder, ...args], { databaseUrl: database.url });
      const refused = await run();
      expect(refused.exitCode).toBe(1);
      expect(refused.err).toContain(
        'moves.csv, line 6, column from: The patient was already on a unit at that time. The cell says "2026-11-05T01:00". (see moves.csv line 4)',
      );
      const empty = await runCommand(ledger, ["verify"], { databaseUrl: database.url });
      expect(empty.out).toBe("0 patients, 0 rows of the ledger, 0 differences.\n");
      const setAside = await run(["--set-aside"]);
      expect(setAside).toMatchObject({ exitCode: 0 });
      expect(setAside.out).toContain("1 refused.\nStored.");
    });
    await database.drop();
  });

  it("completes a move that was open before, and keeps what it said", async () => {
    const database = await fresh();
    const databaseUrl = database.url;
    await withFolder(files, (folder) => runCommand(importFolder, ["--data", folder], { databaseUrl }));
    const later = { "moves.csv": "stay,patient,ward,from,to\nS2,P2,ICU,2026-11-02T00:00,2026-11-04T10:00\n" };
    const run = await withFolder(later, (folder) => runCommand(importFolder, ["--data", folder], { databaseUrl }));
    expect(run.out).toContain("Lines: 1 accepted");
    await database.drop();
  });
});

onEachDatabase("the source of a folder", (fresh) => {
  it("is named by the command, is added on request alone, and stays with the import", async () => {
    const database = await fresh();
    const run = (args: string[]) =>
      withFolder(files, (folder) =>
        runCommand(importFolder, ["--data", folder, ...args], { databaseUrl: database.url }),
      );
    await expect(run(["--new-source"])).rejects.toThrow(new UsageError("Name the new source with --source."));
    const [unknown] = await faultsOf(() => run(["--source", "Admissions"]));
    expect(unknown).toMatchObject({ code: "source-unknown" });
    expect(unknown?.detail).toBe("No import source is named Admissions. None is recorded yet.");
    expect((await run(["--source", "Admissions", "--new-source", "--dry-run"])).exitCode).toBe(0);
    expect((await run(["--source", "Admissions", "--new-source"])).exitCode).toBe(0);
    expect((await run(["--source", "Admissions"])).exitCode).toBe(0);
    expect((await run([])).exitCode).toBe(0);
    const store = openStore(database.url);
    const imports = await store.read((read) =>
      read.db.import.findMany({ include: { source: true }, orderBy: { id: "asc" } }),
    );
    expect(imports.map(({ source }) => source?.name)).toEqual(["Admissions", "Admissions", "Admissions", "Files"]);
    await store.close();
    await database.drop();
  });
});

onEachDatabase("the first import", (fresh) => {
  it("tells what it sets up, once, and after each import the wards that count nowhere", async () => {
    const database = await fresh();
    const settings = { DWELL_FACILITY_NAME: "Alder Bay Hospital" };
    const run = (content: Readonly<Record<string, string>>, args: string[] = []) =>
      withFolder(content, (folder) =>
        runCommand(importFolder, ["--data", folder, ...args], { databaseUrl: database.url, settings }),
      );
    const said =
      'Setting up "Alder Bay Hospital": time zone America/New_York, daily census at 00:00. ' +
      "The zone cannot change after the first admission.\n";
    const sums = (rows: Readonly<Record<string, number>>) =>
      Object.entries(rows)
        .map(([file, count]) => `${file}.csv, rows read: ${count} = ${count} accepted + 0 rejected + 0 blank.\n`)
        .join("");
    const ofFiles = { catheters: 1, "daily-counts": 1, moves: 4, stays: 1, wards: 2 };
    expect((await run(files, ["--dry-run"])).err).toBe(`${said}Reading lines\nChecking lines\n${sums(ofFiles)}`);
    const two = { ...files, "moves.csv": `${files["moves.csv"]}S3,P3,CCU,2026-11-02T00:00,,\n` };
    const phases = "Reading lines\nChecking lines\nStoring lines\n";
    const marked = "moves.csv, line 3, column absence: accepted and marked: time off the units follows.\n";
    const uncounted = (codes: string) =>
      `These units are not counted, because their setting is not recorded: ${codes}. ` +
      "Add them to wards.csv with their setting: inpatient, outpatient or procedure.\n";
    expect((await run(two)).err).toBe(phases + marked + sums({ ...ofFiles, moves: 5 }) + uncounted("CCU, ICU"));
    // Still true when there is nothing new, and until the last of them has its setting.
    expect((await run(two)).err).toContain(uncounted("CCU, ICU"));
    expect((await run({ "wards.csv": "ward,setting\nICU,inpatient\n" })).err).toBe(
      phases + sums({ wards: 1 }) + uncounted("CCU"),
    );
    expect((await run({ "wards.csv": "ward,setting\nCCU,procedure\n" })).err).toBe(phases + sums({ wards: 1 }));
    await database.drop();
  });

  it("into the demo hospital is refused, and changes nothing", async () => {
    const database = await fresh();
    const store = openStore(database.url);
    const person = { name: "Robin Vale", roles: ["prevention"] } as const;
    const demo = { name: "Alder Bay Hospital", zone: "UTC", censusTime: "00:00" as CensusTime, demo: true, person };
    await setUpFacility({ store, now: Date.UTC(2026, 0, 1) }, demo);
    for (const args of [[], ["--dry-run"], ["--set-aside"]])
      await withFolder(files, async (folder) => {
        const run = () => runCommand(importFolder, ["--data", folder, ...args], { databaseUrl: database.url });
        expect(await refusalOf(store, run)).toEqual({ code: "demo-record", pointer: "" });
      });
    await store.close();
    await database.drop();
  });
});

describe("ledger", () => {
  it("refuses a word that it does not know", async () => {
    await expect(runCommand(ledger, ["mend"])).rejects.toThrow("Say verify or rebuild.");
  });
});
