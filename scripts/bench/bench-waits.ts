import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import type { BenchLine, BenchResult } from "./bench-line.ts";
import { startService } from "./child-server.ts";
import { benchFacility } from "./history-size.ts";
import { measureHttp } from "./http-client.ts";
import { type LedgerSize, ledgerFile } from "./write-ledger.ts";

/** What a ward's nurse may have to wait for: reads and files of the whole facility. */
const heavy: readonly { readonly what: string; readonly path: string; readonly accept?: string }[] = [
  { what: "home", path: "/wards/now" },
  { what: "the month's figures", path: "/months/2025-12/figures" },
  { what: "a comparison of 12 months", path: "/ward-comparison?from=2025-01&to=2025-12" },
  {
    what: "the month as XLSX",
    path: "/months/2025-12/document",
    accept: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
  },
  { what: "the month as PDF", path: "/months/2025-12/document", accept: "application/pdf" },
];

/** Rounds that are asked one after another when no other request is under way. */
const alone = 100;
/** Rounds that are asked at most beside one read: a file of hundreds of pages takes minutes. */
const beside = 300;

/**
 * The longest that a round takes while another client asks for a read or a file of the whole facility, against the longest that
 * one takes alone. The aim is at most 0.25 s longer.
 */
export async function benchWaits(size: LedgerSize): Promise<BenchResult> {
  const { file } = await ledgerFile(size);
  const folder = mkdtempSync(join(tmpdir(), "dwell-bench-"));
  const copy = join(folder, "ledger.sqlite");
  copyFileSync(file, copy);
  const database = new Database(copy);
  for (const role of ["prevention", "bedside"])
    database
      .prepare("INSERT INTO person_role (person_id, facility_id, role) VALUES (1, ?, ?)")
      .run(benchFacility, role);
  database.close();
  const service = await startService(copy);
  const round = () => ({ method: "GET", path: `/api/v1/wards/${Math.ceil(size.wards / 2) + 1}/round` }) as const;
  const longestOf = async (count: number) => (await measureHttp(service.base, { clients: 1, count }, round)).longestS;
  try {
    await longestOf(20);
    const baselineS = await longestOf(alone);
    const lines: BenchLine[] = [];
    const notes = [
      `Waiting: ${size.wards} wards of ${size.bedsAWard} beds, ${size.years} years. The aim is 0.25 s more than alone.`,
    ];
    for (const { what, path, accept = "application/json" } of heavy) {
      const request = { method: "GET", path: `/api/v1${path}`, headers: { accept } } as const;
      const asking = settled(measureHttp(service.base, { clients: 1, count: 1 }, () => request));
      let oursS = 0;
      let rounds = 0;
      for (; asking.outcome === null && rounds < beside; rounds++) oursS = Math.max(oursS, await longestOf(1));
      if (asking.outcome instanceof Error) throw asking.outcome;
      lines.push({ what: `longest round during ${what}`, oursS, baseline: "longest round alone", baselineS });
      notes.push(`${what}: ${rounds} rounds meanwhile${asking.outcome === null ? ", and it still ran" : ""}.`);
    }
    return { lines, notes };
  } finally {
    await service.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** How a promise ended; null while it has not. */
function settled(promise: Promise<unknown>): { outcome: "done" | Error | null } {
  const found: { outcome: "done" | Error | null } = { outcome: null };
  promise.then(
    () => {
      found.outcome = "done";
    },
    (error: Error) => {
      found.outcome = error;
    },
  );
  return found;
}
