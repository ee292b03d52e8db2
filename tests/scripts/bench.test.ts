import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { afterAll, beforeAll, expect, it, vi } from "vitest";
import { benchDeterminations } from "../../scripts/bench/bench-determinations.ts";
import { benchImport, importOnce } from "../../scripts/bench/bench-import.ts";
import { benchIntervals } from "../../scripts/bench/bench-intervals.ts";
import { benchMonths } from "../../scripts/bench/bench-months.ts";
import { benchRecount } from "../../scripts/bench/bench-recount.ts";
import { tableOf } from "../../scripts/bench/print-table.ts";
import { differences, emptyCounts } from "../../scripts/bench/ward-day-counts.ts";
import { historyFile } from "../../scripts/bench/write-history.ts";

const history = { seed: 7, wardStays: 3000, catheters: 600, years: 1, wards: 60 };

// The benches keep what they write in the folder for temporary files: here one that is new and goes away again.
const folder = mkdtempSync(join(tmpdir(), "dwell-ledger-test-"));
beforeAll(() => vi.stubEnv("TMPDIR", folder));
afterAll(() => {
  vi.unstubAllEnvs();
  rmSync(folder, { recursive: true });
});

it("a history holds as many ward stays and catheters as were asked for, with voided, merged and open records", async () => {
  const { file } = await historyFile(history);
  const database = new Database(file, { readonly: true });
  const count = (sql: string) => database.prepare(`SELECT count(*) FROM ${sql}`).pluck().get();
  expect(count("ward_stay")).toBe(history.wardStays);
  expect(count("catheter")).toBe(history.catheters);
  for (const kind of [
    "ward_stay WHERE void_key <> 0",
    "ward_stay WHERE end_at IS NULL",
    "ward_stay WHERE absence_after = 'procedure'",
    "catheter WHERE kind = 'suprapubic'",
    "catheter WHERE removed_after_at IS NOT NULL",
    "patient WHERE survivor_id <> id",
  ])
    expect(count(kind), kind).toBeGreaterThan(0);
  database.close();
});

it("the recount and DuckDB, whose query was written apart, agree on every ward day", async () => {
  const { lines, notes } = await benchRecount(history);
  expect(lines).toHaveLength(2);
  expect(notes.join(" ")).toMatch(/Both found [1-9]\d* patient-days and [1-9]\d* catheter-days/);
});

it("a ward day that differs between two counts is found", () => {
  const counts = emptyCounts(2, 100, 3);
  const other = emptyCounts(2, 100, 3);
  other.catheters[4] = 1;
  expect(differences(counts, counts)).toBe(0);
  expect(differences(counts, other)).toBe(1);
});

it("determinations are drawn so that each kind of answer is among them", async () => {
  const { lines, notes } = await benchDeterminations({ seed: 7, timelines: 200 });
  expect(lines).toHaveLength(1);
  for (const outcome of ["event", "not-met", "not-usable", "cannot-tell", "repeat"])
    expect(notes.join(" "), outcome).toMatch(new RegExp(`${outcome} [1-9]`));
});

it("mid-P intervals and p values are those of another library's gamma function", async () => {
  const { lines, notes } = await benchIntervals({ seed: 7, intervals: 500 });
  expect(lines).toHaveLength(2);
  expect(notes.join(" ")).toMatch(/over 50 intervals/);
});

it("months read from a short and a long ledger have the sums of their rows", async () => {
  const { lines } = await benchMonths({ seed: 7, wards: 6, bedsAWard: 2 }, { shortYears: 1, longYears: 2 });
  expect(lines.map(({ what }) => what)).toEqual([
    "one ward's month at 2 y",
    "one ward's month at 1 y",
    "one ward's month at 2 y",
    "one ward's oldest month at 2 y",
    "6 wards' month at 2 y",
    "6 wards' month at 1 y",
    "6 wards' month at 2 y",
  ]);
});

it("an import stores every line that the bare inserts store", async () => {
  const { lines } = await benchImport({ seed: 7, hospitals: 2, days: 10 });
  expect(lines[0]?.what).toMatch(/^import of [1-9]\d* lines$/);
});

it("a large folder is imported once, from several hospitals put together", async () => {
  const notes = await importOnce({ seed: 7, hospitals: 2, days: 5 });
  const [, lines, refused] = /^Imported (\d+) lines in .* (\d+) of them refused/.exec(notes[0] ?? "") ?? [];
  expect(Number(lines)).toBeGreaterThan(100);
  expect(refused).toBe("0");
});

it("the table shows each figure, its baseline and their ratio", () => {
  const table = tableOf([{ what: "work", oursS: 3, baseline: "other work", baselineS: 0.004 }]);
  expect(table.split("\n").map((line) => line.split(/ {2,}/))).toEqual([
    ["measured", "ours", "baseline", "against", "ratio"],
    ["work", "3.00 s", "4.00 ms", "other work", "750.00"],
  ]);
});
