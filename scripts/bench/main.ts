import { cpus } from "node:os";
import { parseArgs } from "node:util";
import { benchDeterminations } from "./bench-determinations.ts";
import { benchDocuments } from "./bench-documents.ts";
import { benchHistory } from "./bench-history.ts";
import { benchImport, importOnce } from "./bench-import.ts";
import { benchIntervals } from "./bench-intervals.ts";
import type { BenchResult } from "./bench-line.ts";
import { benchMonthHttp } from "./bench-month-http.ts";
import { benchMonths } from "./bench-months.ts";
import { benchPages } from "./bench-pages.ts";
import { benchRecording } from "./bench-recording.ts";
import { benchRecount } from "./bench-recount.ts";
import { benchWaits } from "./bench-waits.ts";
import { tableOf } from "./print-table.ts";

const usage = "npm run bench [-- [--million] [--only NAME] [--seed NUMBER]]";

async function main(): Promise<void> {
  const options = {
    million: { type: "boolean", default: false },
    only: { type: "string" },
    seed: { type: "string", default: "20260727" },
  } as const;
  const { values } = parseArgs({ options });
  const seed = Number(values.seed);
  if (!Number.isSafeInteger(seed)) throw new Error(`--seed takes a whole number: ${usage}`);
  tell(`Seed ${seed}, ${machine()}.`);
  if (values.million) {
    // Twenty hospitals of about 50,000 lines each.
    for (const note of await importOnce({ seed, hospitals: 20, days: 1785 })) print(note);
    return;
  }
  // The import comes first: its peak memory is that of the process so far.
  const benches: [string, () => Promise<BenchResult>][] = [
    ["import", () => benchImport({ seed, hospitals: 1, days: 1060 })],
    ["intervals", () => benchIntervals({ seed, intervals: 100_000 })],
    ["determinations", () => benchDeterminations({ seed, timelines: 5_000 })],
    ["documents", () => benchDocuments({ seed, wards: 400 })],
    ["months", () => benchMonths({ seed, wards: 400, bedsAWard: 5 }, { shortYears: 1, longYears: 10 })],
    ["history", () => benchHistory({ seed, wards: 40, bedsAWard: 25 }, { shortYears: 1, longYears: 10 })],
    ["history-400", () => benchHistory({ seed, wards: 400, bedsAWard: 5 }, { shortYears: 1, longYears: 10 })],
    ["waits", () => benchWaits({ seed, wards: 400, bedsAWard: 5, years: 1 })],
    ["month-http", () => benchMonthHttp({ seed, wards: 400, bedsAWard: 5, years: 1 })],
    ["recording", () => benchRecording({ patients: 40, reviews: 1200, rounds: 400 })],
    ["pages", () => benchPages({ catheters: 40 })],
    ["recount", () => benchRecount({ seed, wardStays: 2_000_000, catheters: 400_000, years: 5, wards: 400 })],
  ];
  const results: BenchResult[] = [];
  const chosen = benches.filter(([name]) => name === (values.only ?? name));
  if (chosen.length === 0) throw new Error(`--only takes ${benches.map(([name]) => name).join(", ")}: ${usage}`);
  for (const [name, run] of chosen) {
    const startMs = performance.now();
    results.push(await run());
    tell(`${name}: done after ${((performance.now() - startMs) / 1000).toFixed(0)} s`);
  }
  print(tableOf(results.flatMap((result) => result.lines)));
  for (const note of results.flatMap((result) => result.notes)) print(note);
  print(`Seed ${seed}, ${machine()}. A ratio is ours divided by the baseline of the same run.`);
}

function machine(): string {
  return `${cpus().length} cores (${cpus()[0]?.model.trim() ?? "unknown"}), Node ${process.versions.node}`;
}

function print(line: string): void {
  process.stdout.write(`${line}\n`);
}

function tell(line: string): void {
  process.stderr.write(`${line}\n`);
}

await main();
