import { expect, it } from "vitest";
import { determinations } from "../../src/commands/determinations.ts";
import { openStore } from "../../src/store/open-store.ts";
import { recordSpecimen } from "../../src/usecases/cultures/record-specimen.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { rawQuery } from "../databases/raw-query.ts";
import { utc } from "../databases/utc.ts";
import { runCommand } from "./run-command.ts";

onEachDatabase("determinations", (fresh) => {
  it("verify finds a text that was changed and a case that is missing, and rebuild makes them right", async () => {
    const database = await fresh();
    const store = openStore(database.url);
    const bay = await alderBay(store);
    for (const name of ["P1", "P2", "P3"]) {
      const { patientId } = await bay.admit(name, "2024-03-01 08:00");
      const organisms = [{ name: "No growth" }];
      const specimen = { patientId, kind: "urine", method: "culture", status: "final", organisms } as const;
      await recordSpecimen(bay.at("2024-03-10 12:00"), { ...specimen, collectedAt: utc("2024-03-10 08:00") });
    }
    await store.close();
    const run = (action: string) => runCommand(determinations, [action], { databaseUrl: database.url });
    const rows = await rawQuery(database.url, "SELECT case_id FROM determination ORDER BY case_id");
    const [first, second] = rows.map((row) => Number(row.case_id));
    const changed = `UPDATE determination SET body = replace(body, 'negative', 'event') WHERE case_id = ${first}`;
    await rawQuery(database.url, changed);
    await rawQuery(database.url, `DELETE FROM determination WHERE case_id = ${second}`);
    const wrong = await run("verify");
    expect(wrong).toMatchObject({ exitCode: 1, out: "2 cultures of 3 patients, 2 differences.\n" });
    expect(wrong.err).toContain(`case ${first}: kept is a text that was changed`);
    expect(wrong.err).toContain(`case ${second}: kept is nothing`);
    expect(await run("rebuild")).toMatchObject({ exitCode: 0 });
    expect(await run("verify")).toEqual({ exitCode: 0, out: "3 cultures of 3 patients, 0 differences.\n", err: "" });
    await database.drop();
  });

  it("says what it can do", async () => {
    await expect(runCommand(determinations, [], {})).rejects.toThrow("Say verify or rebuild.");
  });
});
