import { expect, it } from "vitest";
import { importFolder } from "../../src/commands/import.ts";
import { ledger } from "../../src/commands/ledger.ts";
import { openStore } from "../../src/store/open-store.ts";
import type { Store } from "../../src/store/store.ts";
import { wards } from "../../src/store/wards.ts";
import { admitPatient } from "../../src/usecases/record/admit-patient.ts";
import { firstActor } from "../../src/usecases/settings/find-facility.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { utc } from "../databases/utc.ts";
import { type CommandRun, commandContext, runCommand, withFolder } from "./run-command.ts";

type Files = Readonly<Record<string, string>>;
const settings = { DWELL_ZONE: "UTC" };

/** Imports a folder as the command line does. */
function imported(databaseUrl: string, files: Files, args: readonly string[] = []): Promise<CommandRun> {
  return withFolder(files, (folder) =>
    runCommand(importFolder, ["--data", folder, ...args], { databaseUrl, settings }),
  );
}

/** {@link imported}, while somebody records something after every line was tried and before the first is stored. */
function importedWhile(
  databaseUrl: string,
  { files, args, meanwhile }: { files: Files; args: readonly string[]; meanwhile: (store: Store) => Promise<unknown> },
): Promise<CommandRun> {
  return withFolder(files, async (folder) => {
    const { context, out, err } = commandContext(["--data", folder, ...args], { databaseUrl, settings });
    let recorded: Promise<unknown> | undefined;
    const open = (url: string): Store => {
      const store = openStore(url);
      return {
        ...store,
        tx: async (work, options) => {
          if (err().includes("Storing lines")) recorded ??= meanwhile(store);
          await recorded;
          return store.tx(work, options);
        },
      };
    };
    const exitCode = await importFolder({ ...context, databases: { ...context.databases, open } });
    return { exitCode, out: out(), err: err() };
  });
}

/** P1 is admitted by hand on 2 March 2026, as somebody at the ward does. */
async function admitByHand(store: Store): Promise<void> {
  const actor = await firstActor(store);
  if (!actor) throw new Error("there is no facility yet");
  const [ward] = await store.read((read) => wards(read, actor.facilityId));
  if (!ward) throw new Error("there is no ward yet");
  const act = { store, actor, now: utc("2026-03-10 12:00") };
  const patient = { identifier: "P1" };
  await admitPatient(act, { patient, number: "H1", admittedAt: utc("2026-03-02 08:00"), wardId: ward.id });
}

const described = { "wards.csv": "ward,setting\nA,inpatient\n" };

onEachDatabase("lines that are refused while the others are stored", (fresh) => {
  it.each([
    [[], 1, "Stored. Lines that contradict newer entries were rejected and are held for repair."],
    [["--set-aside"], 0, "Stored."],
  ] as const)("with the options %j end the import with %i", async (args, exitCode, said) => {
    const database = await fresh();
    await imported(database.url, described);
    const files = {
      "moves.csv":
        "stay,patient,ward,from,to\n" +
        "S1,P1,A,2026-03-01T08:00,2026-03-03T08:00\nS2,P2,A,2026-03-01T08:00,2026-03-03T08:00\n",
    };
    const run = await importedWhile(database.url, { files, args, meanwhile: admitByHand });
    expect(run.out).toBe(`Lines: 1 accepted, 0 accepted and marked, 0 seen before, 1 refused.\n${said}\n`);
    expect(run.err).toMatch(
      /^moves\.csv, line 2, column from: The patient already has another stay at that time\. The cell says "2026-03-01T08:00"\. \(see stay \d+\) /m,
    );
    expect(run.exitCode).toBe(exitCode);
    expect(await runCommand(ledger, ["verify"], { databaseUrl: database.url })).toMatchObject({ exitCode: 0 });
    await database.drop();
  });
});

onEachDatabase("lines of a folder that contradict each other", (fresh) => {
  const files = {
    "wards.csv":
      "ward,name,setting\nA,3 East,inpatient\nB,4 North,inpatient\nA,3 East,outpatient\nB,4 North,inpatient\n",
    "daily-counts.csv":
      "ward,day,patients,catheters\nA,2026-03-01,12,3\nA,2026-03-02,12,3\nA,2026-03-01,13,3\nA,2026-03-02,12,3\n",
  };
  const detail = "Another line says something else about the same thing.";
  const remedy = "Keep the line that is right and take the other one out.";

  it("about a ward, or about its count of one day, are refused from the second on, which name the first", async () => {
    const database = await fresh();
    const run = await imported(database.url, files);
    expect(run.exitCode).toBe(1);
    expect(run.err.split("\n").filter((line) => line.includes(".csv"))).toEqual([
      `daily-counts.csv, line 4, column ward: ${detail} (see daily-counts.csv line 2) ${remedy}`,
      `wards.csv, line 4, column ward: ${detail} (see wards.csv line 2) ${remedy}`,
      "daily-counts.csv, rows read: 4 = 3 accepted + 1 rejected + 0 blank.",
      "wards.csv, rows read: 4 = 3 accepted + 1 rejected + 0 blank.",
    ]);
    expect(run.out).toContain("Nothing was stored, because lines were rejected.");
    await database.drop();
  });

  it("leave what the first one says when the second is set aside", async () => {
    const database = await fresh();
    const run = await imported(database.url, files, ["--set-aside"]);
    expect(run).toMatchObject({ exitCode: 0 });
    expect(run.out).toContain("2 refused.\nStored.");
    const store = openStore(database.url);
    const stored = await store.read(async (read) => ({
      wards: await read.db.ward.findMany({ orderBy: { code: "asc" }, include: { settings: true } }),
      counts: await read.db.dailyCount.findMany({ orderBy: { day: "asc" } }),
    }));
    await store.close();
    expect(stored.wards.map((w) => [w.code, ...w.settings.map((s) => s.setting)])).toEqual([
      ["A", "inpatient"],
      ["B", "inpatient"],
    ]);
    expect(stored.counts.map((count) => count.patients)).toEqual([12, 12]);
    await database.drop();
  });

  it("are none when another folder says it later: that is a change", async () => {
    const database = await fresh();
    const counted = (patients: number) => ({
      ...described,
      "daily-counts.csv": `ward,day,patients,catheters\nA,2026-03-01,${patients},3\n`,
    });
    for (const patients of [12, 13])
      expect(await imported(database.url, counted(patients))).toMatchObject({ exitCode: 0 });
    const store = openStore(database.url);
    const stored = await store.read((read) => read.db.dailyCount.findMany());
    await store.close();
    expect(stored.map((count) => count.patients)).toEqual([13]);
    await database.drop();
  });
});
