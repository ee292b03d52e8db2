import { expect, it } from "vitest";
import { month as monthText } from "../../shared/day.ts";
import { importFolder } from "../../src/commands/import.ts";
import { openStore } from "../../src/store/open-store.ts";
import { signedMonthChanges } from "../../src/store/signed-month-changes.ts";
import { readMonthFigures } from "../../src/usecases/months/read-month-figures.ts";
import { signMonth } from "../../src/usecases/months/sign-month.ts";
import { firstActor } from "../../src/usecases/settings/find-facility.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { runCommand, withFolder } from "./run-command.ts";

const month = monthText.parse("2026-10");
const files = {
  "wards.csv": "ward,setting\n3E,inpatient\n",
  "moves.csv": "stay,patient,ward,from,to\nS1,P1,3E,2026-10-10T08:00,2026-10-13T10:00\n",
  "catheters.csv": "stay,catheter,inserted,removed\nS1,C1,2026-10-10T09:00,2026-10-12T09:00\n",
};

onEachDatabase("an import by command of days in a signed month", (fresh) => {
  it("tells the month in the dry run, and writes down the figures that it changes", async () => {
    const database = await fresh();
    const run = (content: Readonly<Record<string, string>>, args: string[] = []) =>
      withFolder(content, (folder) =>
        runCommand(importFolder, ["--data", folder, ...args], { databaseUrl: database.url }),
      );
    await run(files);
    const store = openStore(database.url);
    const actor = await firstActor(store);
    if (!actor) throw new Error("the first import sets a facility up");
    const act = { store, actor, now: Date.UTC(2026, 10, 25, 12) };
    const { seen } = await readMonthFigures(act, { month });
    await signMonth(act, { month, seen, replaces: 0, reason: null });
    const late = { "catheters.csv": files["catheters.csv"].replace("10-12T09:00", "10-11T09:00") };
    const dry = await run(late, ["--dry-run"]);
    expect(dry.out).toContain("It touches signed months: 2026-10.\nThis was a dry run: nothing was stored.");
    expect((await run(files, ["--dry-run"])).out).not.toContain("signed months");
    const changes = () => store.read((read) => signedMonthChanges(read, actor.facilityId, month));
    expect(await changes()).toEqual([]);
    expect((await run(late)).exitCode).toBe(0);
    const [change, ...more] = await changes();
    expect([change?.action, change?.entry?.kind, more]).toEqual(["import-lines", "import", []]);
    // By hand: in place at the censuses of the 11th and the 12th, and now of the 11th alone.
    expect(change?.figures).toContainEqual(
      expect.objectContaining({ ward: "3E", figure: "catheter_days", before: 2, after: 1 }),
    );
    await store.close();
    await database.drop();
  });
});
