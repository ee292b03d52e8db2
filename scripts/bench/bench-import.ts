import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { ImportResult } from "../../src/usecases/imports/intake-item.ts";
import type { BenchResult } from "./bench-line.ts";
import { importFolder } from "./import-folder.ts";
import { insertLines } from "./insert-lines.ts";
import { type FolderSize, writeFolder } from "./write-folder.ts";

/** Importing a folder against bare inserts of the same lines. Throws when one of them misses lines. */
export async function benchImport(size: FolderSize): Promise<BenchResult> {
  return inFolder(async (folder) => {
    const files = await writeFolder(folder, size);
    const ours = await importFolder(folder, join(folder, "ours.sqlite"));
    const peakMb = peakMemoryMb();
    const lines = linesOf(ours.result);
    const place = { folder, files: [...files.keys()], database: join(folder, "bare.sqlite") };
    const bare = await insertLines(place, ours.commits);
    if (lines !== bare.lines) throw new Error(`the import knows ${lines} lines of ${bare.lines}`);
    const baseline = "bare prepared inserts, as many commits";
    return {
      lines: [{ what: `import of ${lines} lines`, oursS: ours.seconds, baseline, baselineS: bare.seconds }],
      notes: [
        `Import: ${Math.round(lines / ours.seconds)} lines a second, read, checked, applied and posted to the ledger, against ${Math.round(lines / bare.seconds)} inserted as they stand.`,
        `Refused and set aside: ${ours.result.refused}. Both: write-ahead log, synchronous=FULL, ${ours.commits} commits. Peak memory of the process until then: ${peakMb} MB.`,
      ],
    };
  });
}

/** Imports a folder once and tells the time and the peak memory; compares with nothing. */
export async function importOnce(size: FolderSize): Promise<readonly string[]> {
  return inFolder(async (folder) => {
    const files = await writeFolder(folder, size);
    const beforeMb = peakMemoryMb();
    const { result, seconds } = await importFolder(folder, join(folder, "ours.sqlite"));
    const written = [...files.values()].reduce((sum, count) => sum + count, 0);
    const lines = linesOf(result);
    if (lines !== written) throw new Error(`the import knows ${lines} lines of ${written}`);
    return [
      `Imported ${lines} lines in ${seconds.toFixed(1)} s: ${Math.round(lines / seconds)} lines a second; ${result.refused} of them refused and set aside.`,
      `Peak memory of the process: ${peakMemoryMb()} MB, of which ${beforeMb} MB before the import began.`,
    ];
  });
}

function linesOf({ accepted, marked, unchanged, refused }: ImportResult): number {
  return accepted + marked + unchanged + refused;
}

/** The most memory that this process has held so far, in megabytes. */
function peakMemoryMb(): number {
  return Math.round(process.resourceUsage().maxRSS / 1024);
}

async function inFolder<T>(work: (folder: string) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), "dwell-ledger-bench-"));
  try {
    return await work(folder);
  } finally {
    rmSync(folder, { recursive: true });
  }
}
