import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { expect, it } from "vitest";
import { report } from "../../src/commands/report.ts";
import { runCommand } from "../commands/run-command.ts";

// Real ward movements and catheter spells: MIMIC-III Clinical Database Demo v1.4 (ODbL 1.0), dates shifted and wards
// renamed. The days were counted by two independent programs.
const folder = fileURLToPath(new URL("data/ward-stays/", import.meta.url));

const publishedCounts = [
  { census: "00:00", file: "census-0000.csv", patientDays: 487, catheterDays: 156 },
  { census: "12:00", file: "census-1200.csv", patientDays: 490, catheterDays: 158 },
];

it.each(publishedCounts)(
  "every ward day of real ward stays is counted as in $file (census $census)",
  async (counts) => {
    const { exitCode, out, err } = await runCommand(report, [
      ...["--data", folder, "--census", counts.census, "--zone", "UTC"],
      ...["--by", "day", "--format", "csv", "--set-aside", "--empty-organism", "no-growth"],
    ]);
    expect(exitCode).toBe(0);
    const expected = readFileSync(`${folder}${counts.file}`, "utf8").replaceAll("\r\n", "\n");
    expect(out).toBe(expected);
    const sum = (column: number) =>
      out
        .trim()
        .split("\n")
        .slice(1)
        .reduce((all, row) => all + Number(row.split(",")[column]), 0);
    expect([sum(2), sum(3)]).toEqual([counts.patientDays, counts.catheterDays]);
    expect(err).toContain("3 lines were set aside");
  },
);

it("the three spells wholly outside their stay are refused and point to the stay", async () => {
  const { exitCode, out, err } = await runCommand(report, ["--data", folder, "--zone", "UTC"]);
  expect(exitCode).toBe(1);
  expect(out).toBe("");
  expect(err.match(/^catheters\.csv, line \d+/gm)).toEqual([
    "catheters.csv, line 9",
    "catheters.csv, line 21",
    "catheters.csv, line 22",
  ]);
  expect(err).toContain(
    'catheters.csv, line 9, column removed: The catheter was removed before the stay began. The cell says "2025-03-01T04:00:01". (see moves.csv line 82)',
  );
});

it("the month's doubts are those of the record: one catheter in place on arrival, 19 unexplained absences", async () => {
  const { out } = await runCommand(report, ["--data", folder, "--zone", "UTC", "--set-aside", "--format", "json"]);
  const sheet = JSON.parse(out);
  expect(sheet.total.slice(2, 4)).toEqual([487, 156]);
  expect(sheet.cautions).toContain("Data quality: 1 catheter was in place on arrival.");
  expect(sheet.cautions).toContain("Data quality: 19 times off the wards are of an unknown kind.");
});
