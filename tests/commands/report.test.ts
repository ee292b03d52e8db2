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
    expect(run.out).toMatch(/^All units +6 +0 +0\.00$/m);
    expect(run.out).toContain("Counted at the daily census (00:00, UTC).");
    expect(run.out).toContain("Named only in moves and counted as inpatient units: A, B.");
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

  it("prints rows alone as CSV, and what to know about them on standard error", async () => {
    const run = await withFolder({ "moves.csv": moves }, (folder) =>
      runCommand(report, ["--data", folder, "--format", "csv"]),
    );
    expect(run.out.trimEnd().split("\n")).toHaveLength(3);
    expect(run.err).toBe(
      [
        ...["Reading lines", "Checking lines", "Storing lines"],
        ...[
          "moves.csv, rows read: 3 = 3 accepted + 0 rejected + 0 blank.",
          "Counted at the daily census (00:00, UTC).",
        ],
        "Named only in moves and counted as inpatient units: A, B. Describe them in wards.csv.",
        "",
      ].join("\n"),
    );
    const table = await withFolder({ "moves.csv": moves }, (folder) => runCommand(report, ["--data", folder]));
    expect(table.err).toBe(
      "Reading lines\nChecking lines\nStoring lines\nmoves.csv, rows read: 3 = 3 accepted + 0 rejected + 0 blank.\n",
    );
  });

  it.each([
    [1, "1 line was"],
    [2, "2 lines were"],
  ])("says of %i refused or set aside that %s", async (count, said) => {
    const wrong = Array.from({ length: count }, (_, i) => `S9${i},P9${i},A,2026-03-02T08:00,2026-03-01T08:00,\n`);
    const run = (args: string[]) =>
      withFolder({ "moves.csv": moves + wrong.join("") }, (folder) => runCommand(report, ["--data", folder, ...args]));
    const refused = await run([]);
    expect(refused).toMatchObject({ exitCode: 1, out: "" });
    expect(refused.err).toMatch(
      new RegExp(`^${said} rejected, so nothing was counted\\. Fix them, or add --set-aside\\.$`, "m"),
    );
    const aside = await run(["--set-aside"]);
    expect(aside.exitCode).toBe(0);
    expect(aside.err).toMatch(new RegExp(`^${said} set aside and count nowhere\\.$`, "m"));
    expect(aside.out).toMatch(/^All units +6 /m);
  });

  it("refuses a month that has not begun in the zone as wrong usage, and takes the one that has", async () => {
    const now = Date.UTC(2026, 2, 31, 16);
    const run = (month: string, zone: string) =>
      withFolder({ "moves.csv": moves }, (folder) =>
        runCommand(report, ["--data", folder, "--set-aside", "--month", month, "--zone", zone], { now }),
      );
    for (const [month, zone] of [
      ["2026-04", "UTC"],
      ["2026-05", "Asia/Tokyo"],
      ["2027-01", "UTC"],
    ] as const)
      await expect(run(month, zone)).rejects.toThrow(new UsageError("--month has not begun yet."));
    expect(await run("2026-03", "UTC")).toMatchObject({ exitCode: 0 });
    // At 16:00 UTC the first of April has come to Tokyo.
    expect(await run("2026-04", "Asia/Tokyo")).toMatchObject({ exitCode: 0 });
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
