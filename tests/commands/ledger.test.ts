import { expect, it } from "vitest";
import { importFolder } from "../../src/commands/import.ts";
import { ledger } from "../../src/commands/ledger.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { rawQuery } from "../databases/raw-query.ts";
import { runCommand, withFolder } from "./run-command.ts";

const files = {
  "wards.csv": "ward,setting\nA,inpatient\nB,inpatient\n",
  "moves.csv": "stay,patient,ward,from,to\nS1,P1,A,2026-11-01T08:00,2026-11-05T08:00\n",
  "catheters.csv": "stay,inserted,removed\nS1,2026-11-02T09:00,2026-11-04T09:00\n",
};

onEachDatabase("ledger", (fresh) => {
  it("verify finds every row that was changed behind its back, and rebuild makes them right", async () => {
    const database = await fresh();
    const databaseUrl = database.url;
    const run = (action: string) => runCommand(ledger, [action], { databaseUrl });
    await withFolder(files, (folder) => runCommand(importFolder, ["--data", folder], { databaseUrl }));
    // At midnight on ward A from 2 to 5 November; the catheter on the 3rd and the 4th.
    const clean = { exitCode: 0, out: "1 patients, 4 rows of the ledger, 0 differences.\n", err: "" };
    expect(await run("verify")).toEqual(clean);

    const days = await rawQuery(databaseUrl, "SELECT day, ward_id, stay_id, patient_id FROM patient_day ORDER BY day");
    const [second, third, fourth] = days.map((row) => Number(row.day));
    const { ward_id: a, stay_id: stay, patient_id: patient } = days[0] ?? {};
    const [{ id: b } = {}] = await rawQuery(databaseUrl, "SELECT id FROM ward WHERE code = 'B'");
    await rawQuery(databaseUrl, `UPDATE patient_day SET catheter = NOT catheter WHERE day = ${third}`);
    await rawQuery(databaseUrl, `UPDATE patient_day SET ward_id = ${b} WHERE day = ${second}`);
    await rawQuery(databaseUrl, `DELETE FROM patient_day WHERE day = ${fourth}`);
    const extra = Number(second) + 30;
    await rawQuery(
      databaseUrl,
      `INSERT INTO patient_day (patient_id, day, ward_id, stay_id, catheter)
       SELECT patient_id, ${extra}, ward_id, stay_id, catheter FROM patient_day WHERE day = ${third}`,
    );

    const on = (ward: unknown, catheter: string) => `ward ${ward}, stay ${stay}, ${catheter} a catheter`;
    const differences = [
      `patient ${patient}, 2026-11-02: the ledger has ${on(b, "without")}, the recount ${on(a, "without")}`,
      `patient ${patient}, 2026-11-03: the ledger has ${on(a, "without")}, the recount ${on(a, "with")}`,
      `patient ${patient}, 2026-11-04: the ledger has no day, the recount ${on(a, "with")}`,
      `patient ${patient}, 2026-12-02: the ledger has ${on(a, "without")}, the recount no day`,
    ];
    const wrong = await run("verify");
    expect(wrong).toMatchObject({ exitCode: 1, out: "1 patients, 4 rows of the ledger, 4 differences.\n" });
    expect(wrong.err.trimEnd().split("\n").sort()).toEqual(differences);

    const rebuilt = await run("rebuild");
    expect(rebuilt).toMatchObject({
      exitCode: 0,
      out: "1 patients, 4 rows of the ledger, 4 differences. They are right now.\n",
    });
    expect(rebuilt.err.trimEnd().split("\n").sort()).toEqual(differences);
    expect(await run("verify")).toEqual(clean);
    expect(await run("rebuild")).toEqual(clean);
    await database.drop();
  });

  it("is empty and right when there is no facility yet", async () => {
    const database = await fresh();
    for (const action of ["verify", "rebuild"])
      expect(await runCommand(ledger, [action], { databaseUrl: database.url })).toEqual({
        exitCode: 0,
        out: "There is no facility yet, so the ledger is empty.\n",
        err: "",
      });
    await database.drop();
  });
});

it.each([[[]], [["mend"]], [["verify", "rebuild"]]])("ledger refuses %j as wrong usage", async (args) => {
  await expect(runCommand(ledger, args)).rejects.toThrow("Say verify or rebuild.");
});
