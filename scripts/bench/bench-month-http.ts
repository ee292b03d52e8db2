import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { type BenchResult, medianOf } from "./bench-line.ts";
import { startService } from "./child-server.ts";
import { benchFacility } from "./history-size.ts";
import { measureHttp } from "./http-client.ts";
import { type LedgerSize, ledgerFile } from "./write-ledger.ts";

/** December 2025, the last month of the history. */
const month = { text: "2025-12", first: 20_423, last: 20_453 };
const asked = { clients: 1, count: 7 };

/**
 * A month of all wards over HTTP, without any cache: its days, and every figure with limits, against the bare sums by
 * ward of the same database. Throws when the sums differ.
 */
export async function benchMonthHttp(size: LedgerSize): Promise<BenchResult> {
  const { file } = await ledgerFile(size);
  const folder = mkdtempSync(join(tmpdir(), "dwell-bench-"));
  const copy = join(folder, "ledger.sqlite");
  copyFileSync(file, copy);
  const database = new Database(copy);
  database
    .prepare("INSERT INTO person_role (person_id, facility_id, role) VALUES (1, ?, 'prevention')")
    .run(benchFacility);
  const sums = database.prepare(
    "SELECT ward_id, count(*) AS patients, sum(catheter) AS catheters FROM patient_day WHERE ward_id IN (SELECT id FROM ward) AND day >= ? AND day <= ? GROUP BY ward_id",
  );
  const service = await startService(copy);
  try {
    const bare = await medianOf(20, () => sums.all(month.first, month.last));
    const ask = (path: string) =>
      measureHttp(service.base, asked, () => ({ method: "GET", path: `/api/v1/months/${month.text}${path}` }));
    const days = await ask("");
    const figures = await ask("/figures");
    checkWards(days.bytes, bare.value.length);
    const baseline = "bare sums by ward";
    return {
      lines: [
        { what: `${size.wards} wards' month over HTTP`, oursS: days.medianS, baseline, baselineS: bare.seconds },
        { what: `${size.wards} wards' figures over HTTP`, oursS: figures.medianS, baseline, baselineS: bare.seconds },
      ],
      notes: [
        `The month over HTTP: ${size.bedsAWard} beds a ward, ${days.bytes.length} bytes of days, ${figures.bytes.length} bytes of figures.`,
      ],
    };
  } finally {
    await service.stop();
    database.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

function checkWards(answer: Buffer, summed: number): void {
  const { wardIds } = JSON.parse(answer.toString()) as { wardIds: number[] };
  if (wardIds.length < summed) throw new Error(`the month has ${wardIds.length} wards, the ledger ${summed}`);
}
