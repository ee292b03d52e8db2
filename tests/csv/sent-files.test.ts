import { expect, it } from "vitest";
import { defaultSourceSettings } from "../../shared/source-settings.ts";
import { layoutNamed, readSentFiles, refuseUnknownFiles } from "../../src/csv/sent-files.ts";
import type { SentFile } from "../../src/store/import-files.ts";

async function read(files: readonly SentFile[]) {
  const { items, notices, headers } = readSentFiles(files, {
    zone: "America/New_York",
    settings: defaultSourceSettings,
  });
  const lines: unknown[] = [];
  for await (const item of items) lines.push(item);
  return { lines, notices, headers };
}

it("files are read like a folder of them: in the order of the layouts, in the zone of the facility", async () => {
  const { lines, notices, headers } = await read([
    { name: "moves.csv", text: "stay,patient,ward,from\nS1,P1,A,2026-11-10T08:00\n" },
    { name: "a/Wards.CSV", text: "\uFEFFsep=;\r\n\r\nward;setting\r\nA;inpatient\r\n" },
    { name: "notes.txt", text: "x" },
  ]);
  expect(lines).toMatchObject([
    { type: "line", file: "wards.csv", line: 4, values: { ward: "A", setting: "inpatient" } },
    // 08:00 in New York in November is 13:00 UTC.
    { type: "line", file: "moves.csv", line: 2, values: { from: Date.UTC(2026, 10, 10, 13) } },
  ]);
  expect(notices).toMatchObject([{ file: "notes.txt" }]);
  expect(headers).toEqual(["stay,patient,ward,from", "ward;setting", null]);
});

it("a file of several pieces is read whole, also where a character of several bytes lies between two of them", async () => {
  const long = Array.from({ length: 4000 }, (_, n) => `W${n},${"é".repeat(20)}\n`).join("");
  const { lines } = await read([{ name: "wards.csv", text: `ward,name\n${long}` }]);
  expect(lines).toHaveLength(4000);
  expect(new Set(lines.map((line) => (line as { values: { name: string } }).values.name))).toEqual(
    new Set(["é".repeat(20)]),
  );
});

it("an empty file has no header, and says so as a whole", async () => {
  const { lines, headers } = await read([{ name: "moves.csv", text: "" }]);
  expect(headers).toEqual([null]);
  expect(lines).toMatchObject([{ type: "refused", wholeFile: true, faults: [{ code: "csv-empty" }] }]);
});

it("files are known by their names, and refused without repeating them when none is", () => {
  expect(layoutNamed("C:\\export\\MOVES.csv")?.name).toBe("moves.csv");
  expect(layoutNamed("moves.csv.txt")).toBeUndefined();
  expect(() => refuseUnknownFiles([{ name: "x.txt" }, { name: "stays.csv" }])).not.toThrow();
  expect(() => refuseUnknownFiles([{ name: "ALDER-1001.csv" }])).toThrow(
    /^Only files with these names are read: wards/,
  );
});
