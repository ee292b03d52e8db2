import { describe, expect, it } from "vitest";
import { UsageError } from "../../src/commands/command.ts";
import { report } from "../../src/commands/report.ts";
import { runCommand, withFolder } from "./run-command.ts";

const moves = `stay,patient,ward,from,to,absence
S1,P1,A,2026-03-01T10:00,2026-03-03T09:00,
S1,P1,B,2026-03-03T09:00,2026-03-05T08:00,
S2,P2,A,2026-03-31T20:00,2026-04-02T12:00,
`;
const catheters = `stay,inserted,removed
S1,2026-03-02T08:00,2026-03-04T07:00
`;

describe("report", () => {
  it("prints a month per ward with the wards that were only named in moves marked", async () => {
    const run = await withFolder({ "moves.csv": moves, "catheters.csv": catheters }, (folder) =>
      runCommand(report, ["--data", folder, "--month", "2026-03", "--format", "csv"]),
    );
    expect(run).toMatchObject({ exitCode: 0 });
    // At midnight: P1 on A on the 2nd and 3rd, on B on the 4th and 5th; the catheter on the 3rd and 4th.
    expect(run.out).toBe(
      [
        "ward,name,patient_days,catheter_days,utilization,note",
        'A,A,2,1,0.5,"named only in moves, counted as inpatient"',
        'B,B,2,1,0.5,"named only in moves, counted as inpatient"',
        "",
      ].join("\n"),
    );
  });

  it("prints exactly the four columns by day, sorted by ward and day", async () => {
    const run = await withFolder({ "moves.csv": moves, "catheters.csv": catheters }, (folder) =>
      runCommand(report, ["--data", folder, "--by", "day", "--format", "csv", "--census", "12:00"]),
    );
    expect(run.out).toBe(
      [
        "ward,day,patient_days,catheter_days",
        ...["A,2026-03-01,1,0", "A,2026-03-02,1,1", "A,2026-04-01,1,0"],
        ...["B,2026-03-03,1,1", "B,2026-03-04,1,0", ""],
      ].join("\n"),
    );
  });

  it("prints a table with a total, the census and what to know before using it", async () => {
    const run = await withFolder({ "moves.csv": moves }, (folder) => runCommand(report, ["--data", folder]));
    expect(run.out).toMatch(/^All wards +6 +0 +0\.00$/m);
    expect(run.out).toContain("Counted at the daily census (00:00, UTC).");
    expect(run.out).toContain("Named only in moves and counted as inpatient wards: A, B.");
  });

  it("lists every fault by file, line and column, prints nothing and ends with 1", async () => {
    const faulty = {
      "moves.csv": moves.replace("2026-03-05T08:00", "2026-03-32T08:00"),
      "catheters.csv": "stay,inserted\nS9,2026-03-02T08:00\n",
    };
    const run = await withFolder(faulty, (folder) => runCommand(report, ["--data", folder]));
    expect(run.exitCode).toBe(1);
    expect(run.out).toBe("");
    expect(run.err).toMatch(/^moves\.csv, line 3, column to: .+$/m);
    expect(run.err).toMatch(/^catheters\.csv, line 2, column .+: No stay has this number\./m);
  });

  it("refuses a time that the zone skipped, by name", async () => {
    const gap = "stay,patient,ward,from,to\nS1,P1,A,2026-03-08T02:30,2026-03-09T02:30\n";
    const run = await withFolder({ "moves.csv": gap }, (folder) =>
      runCommand(report, ["--data", folder, "--zone", "America/New_York"]),
    );
    expect(run.exitCode).toBe(1);
    expect(run.err).toMatch(/moves\.csv, line 2, column from: .*01:59.*03:00/);
  });

  it.each([
    [["--month", "2026-13", "--data", "x"], "--month"],
    [["--census", "25:00", "--data", "x"], "--census"],
    [["--zone", "Nowhere/Else", "--data", "x"], "--zone"],
    [["--format", "xml", "--data", "x"], "--format"],
    [["--by", "week", "--data", "x"], "--by"],
    [[], "--data"],
    [["--unknown"], "--unknown"],
  ])("refuses %j as wrong usage", async (args, named) => {
    await expect(runCommand(report, args)).rejects.toThrow(UsageError);
    await expect(runCommand(report, args)).rejects.toThrow(named);
  });
});
