import { expect, it } from "vitest";
import { importFolder } from "../../src/commands/import.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { runCommand, withFolder } from "./run-command.ts";

const header = "stay,patient,ward,from,to\n";

/** What an import says about a folder on standard error, without the phases. */
async function faultsOf(databaseUrl: string, files: Record<string, string>): Promise<string[]> {
  const run = await withFolder(files, (folder) => runCommand(importFolder, ["--data", folder], { databaseUrl }));
  expect(run.exitCode).toBe(1);
  return run.err
    .trimEnd()
    .split("\n")
    .filter((line) => !/^(Reading|Checking|Storing) lines$|^Setting up |, rows read: /.test(line));
}

onEachDatabase("faults", (fresh) => {
  it("are told one a line, by file, line and column, with the other record and the remedy", async () => {
    const database = await fresh();
    const found = await faultsOf(database.url, {
      "moves.csv": `${header}S1,P1,A,2026-11-01T08:00,2026-11-05T08:00
S1,P1,B,2026-11-03T08:00,2026-11-06T08:00
S2,P2,A,2026-11-02T08:00,2026-11-01T08:00
S3,P3,,03/04/2026,2026-11-01T08:00
`,
      "catheters.csv": "stay,inserted\nS9,2026-11-02T09:00\n",
    });
    expect(found).toEqual([
      "catheters.csv, line 2, column stay: No stay has this number. Give the stay in stays.csv or its moves in moves.csv, or correct the number.",
      'moves.csv, line 3, column from: The patient was already on a unit at that time. The cell says "2026-11-03T08:00". (see moves.csv line 2) Correct the end or the beginning of one of the two unit stays.',
      'moves.csv, line 4, column to: The move ends before it begins. The cell says "2026-11-01T08:00". Correct one of the two times.',
      expect.stringMatching(/^moves\.csv, line 5, column ward: .+\. Fill in the cell\.$/),
      expect.stringMatching(/^moves\.csv, line 5, column from: .+ Write the year first: .+\.$/),
    ]);
    await database.drop();
  });

  it("of a whole file name the file, and are told when there are more than one page of them", async () => {
    const database = await fresh();
    const lines = Array.from({ length: 1001 }, (_, i) => `S${i},P${i},A,never,\n`);
    const found = await faultsOf(database.url, { "moves.csv": header + lines.join(""), "stays.csv": "" });
    expect(found).toHaveLength(1002);
    expect(found.slice(0, 1001).every((line, i) => line.startsWith(`moves.csv, line ${i + 2}, column from: `))).toBe(
      true,
    );
    expect(found[1001]).toMatch(/^stays\.csv: .+ Give the file a header line/);
    await database.drop();
  });
});
