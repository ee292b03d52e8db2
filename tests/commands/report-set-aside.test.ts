import { describe, expect, it } from "vitest";
import { report } from "../../src/commands/report.ts";
import { runCommand, withFolder } from "./run-command.ts";

const stays = "stay,patient,sex,admitted,discharged,disposition\n";
const moves = `stay,patient,ward,from,to
S1,P1,A,2026-03-01T10:00,2026-03-03T09:00
S2,P2,B,2026-03-01T10:00,2026-03-03T09:00
`;

/** What the command says of files when rejected lines are set aside. */
function run(files: Readonly<Record<string, string>>, args: readonly string[] = []) {
  return withFolder(files, (folder) =>
    runCommand(report, ["--data", folder, "--month", "2026-03", "--set-aside", ...args]),
  );
}

describe("report --set-aside", () => {
  it("says how many lines are missing by ward and in total, and withholds a ratio of rejected lines alone", async () => {
    const files = {
      "moves.csv": moves,
      "catheters.csv": "stay,inserted,removed\nS1,2026-03-02T08:00,2026-03-01T12:00\nS1,someday,\n",
    };
    const { out, exitCode } = await run(files, ["--format", "csv"]);
    expect(exitCode).toBe(0);
    const note = "named only in moves, counted as inpatient";
    expect(out.trimEnd().split("\n").slice(1)).toEqual([
      `A,A,2,,,"${note}; missing: 2 of 2 catheter lines rejected"`,
      `B,B,2,0,0,"${note}"`,
    ]);
    const table = await run(files);
    expect(table.out).toMatch(/^All units +4 +missing +- +missing: 2 of 2 catheter lines rejected$/m);
    const byDay = await run(files, ["--by", "day", "--format", "csv"]);
    expect(byDay.out).toContain("A,2026-03-02,1,\n");
    expect(byDay.err).toContain("missing: 2 of 2 catheter lines rejected. By unit: A (missing: 2 of 2");
  });

  it("counts what is there beside what is missing, of moves and catheters", async () => {
    const files = {
      "moves.csv": `${moves}S1,P1,B,2026-03-02T10:00,2026-03-02T12:00\n`,
      "catheters.csv":
        "stay,inserted,removed\nS1,2026-03-02T08:00,2026-03-03T08:00\nS2,2026-03-02T08:00,2026-03-01T12:00\n",
    };
    const { out } = await run(files);
    expect(out).toMatch(/^A .* 2 +1 +0\.50 +named only in moves, counted as inpatient$/m);
    expect(out).toMatch(
      /^B .* missing +- +.*missing: 1 of 1 catheter line rejected; missing: 1 of 2 move lines rejected$/m,
    );
    expect(out).toMatch(/^All units .*missing: 1 of 2 catheter lines rejected; missing: 1 of 3 move lines rejected$/m);
  });

  it("names each marked line with its reason, and how the rows of each file add up", async () => {
    const files = {
      "moves.csv": `${moves}"","","","",""\nS3,P3,A,2026-03-05T10:00,2026-03-04T10:00\n`,
      "specimens.csv": "stay,kind,collected,organism,count\nS1,urine,2026-03-02T08:00,Bacterium imaginarium,100000\n",
    };
    const { err } = await run(files);
    expect(err).toMatch(/^moves\.csv: 1 row is blank: line 4\.$/m);
    expect(err).toMatch(/^specimens\.csv, line 2, column organism: accepted and marked: the name is not on the list/m);
    expect(err).toContain("moves.csv, rows read: 4 = 2 accepted + 1 rejected + 1 blank.\n");
    expect(err).toContain("specimens.csv, rows read: 1 = 1 accepted + 0 rejected + 0 blank.\n");
  });

  it("quotes the cell that it rejects, and nothing by which a patient could be known", async () => {
    const rows = [
      "S1,P1,male,2026-03-01T10:00,2026-03-03T09:00,SNF",
      "S2,P2,woman of 40,2026-03-01T10:00,soon,home",
      // Cells that were shifted: the sex is a patient's number.
      "S3,P33,P33,2026-03-01T10:00,,",
    ];
    const { err } = await run({ "stays.csv": `${stays}${rows.join("\n")}\n`, "moves.csv": moves });
    expect(err).toMatch(
      /^stays\.csv, line 3, column sex: This is none of: female, male, other, unknown\. The cell says "woman of 40"\./m,
    );
    expect(err).toMatch(/^stays\.csv, line 3, column discharged: .* The cell says "soon"\./m);
    expect(err).toMatch(/^stays\.csv, line 4, column sex: This is none of: female, male, other, unknown\. [^T]/m);
    expect(err).not.toContain("P33");
    expect(err).not.toMatch(/^stays\.csv, line 2/m);
  });

  it("quotes the cell also where another line of the files contradicts it", async () => {
    const late = `${moves}S1,P1,ICU,2026-03-02T10:00,2026-03-04T09:00\n`;
    const { err } = await run({ "moves.csv": late, "catheters.csv": "stay,inserted\nS1,2026-03-09T08:00\n" });
    expect(err).toMatch(/^moves\.csv, line \d+, column from: .* The cell says "2026-03-02T10:00"\./m);
    expect(err).toMatch(/^catheters\.csv, line 2, column inserted: .* The cell says "2026-03-09T08:00"\./m);
  });

  it.each([
    ["stays.csv", `${stays}S1,P1,?,2026-03-01T10:00,2026-03-03T09:00,home\n`, "sex"],
    ["stays.csv", `${stays}S1,P1,X,2026-03-01T10:00,2026-03-03T09:00,home\n`, "sex"],
    ["stays.csv", `${stays}S1,P1,f,2026-03-01T10:00,2026-03-03T09:00,the moon\n`, "disposition"],
    ["catheters.csv", "stay,inserted,kind\nS1,2026-03-02T08:00,garden hose\n", "kind"],
    ["catheters.csv", "stay,inserted,indication\nS1,2026-03-02T08:00,convenience of staff\n", "indication"],
  ])("rejects an unknown word in %s with its remedy: %#", async (file, text, column) => {
    const { err } = await run({ "moves.csv": moves, [file]: text });
    expect(err).toMatch(
      new RegExp(`^${file}, line 2, column ${column}: This is none of: .* The cell says ".+"\\. .+$`, "m"),
    );
  });
});
