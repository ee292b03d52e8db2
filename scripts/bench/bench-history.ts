import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import type { FastifyInstance } from "fastify";
import { buildApp } from "../../src/http/app.ts";
import { localPrincipal } from "../../src/http/principal.ts";
import { openStore } from "../../src/store/open-store.ts";
import { watchSignedMonths } from "../../src/usecases/watch-signed-months.ts";
import { type BenchLine, type BenchResult, written } from "./bench-line.ts";
import { benchFacility, historyEnd } from "./history-size.ts";
import { type LedgerSize, ledgerFile } from "./write-ledger.ts";

/** A question of the bench: its name, how often it is asked, and the request. */
interface Asked {
  readonly what: string;
  readonly times: number;
  readonly method: "GET" | "POST";
  readonly path: (i: number) => string;
  readonly body?: (i: number) => object;
}

/**
 * What each page and a review cost at a short and a long history of the same wards, as processor time of a request. The
 * aim is 1.2 times: cost does not grow with history. Throws for an answer that is not 200.
 */
export async function benchHistory(
  size: Omit<LedgerSize, "years" | "care">,
  { shortYears, longYears }: { shortYears: number; longYears: number },
): Promise<BenchResult> {
  // The first pass compiles the program and does not count.
  await measure({ ...size, years: shortYears, care: true });
  const short = await measure({ ...size, years: shortYears, care: true });
  const long = await measure({ ...size, years: longYears, care: true });
  const lines: BenchLine[] = [...long.seconds].map(([what, oursS]) => ({
    ...{ what: `${what}, ${size.wards} wards, ${longYears} y (processor)`, oursS },
    ...{ baseline: `the same at ${shortYears} y`, baselineS: short.seconds.get(what) ?? Number.NaN },
  }));
  const notes = [
    `History: ${size.wards} wards of ${size.bedsAWard} beds, all taken, with reviews, cultures and audit trail; SQLite, processor time of the whole request. The aim is a ratio of 1.2.`,
    written(`The histories of ${shortYears} and ${longYears} years`, short.writtenS + long.writtenS),
  ];
  return { lines, notes };
}

async function measure(size: LedgerSize): Promise<{ seconds: Map<string, number>; writtenS: number }> {
  const { file, writtenS } = await ledgerFile(size);
  const folder = mkdtempSync(join(tmpdir(), "dwell-bench-"));
  const copy = join(folder, "ledger.sqlite");
  copyFileSync(file, copy);
  const catheters = preparedFor(copy);
  const store = watchSignedMonths(openStore(copy));
  const app = await buildApp({
    ...{ store, clock: () => historyEnd, version: "bench" },
    principalOf: localPrincipal({ store, demo: false }),
  });
  try {
    const seconds = new Map<string, number>();
    for (const asked of askedOf(size, catheters)) seconds.set(asked.what, await processorS(app, asked));
    return { seconds, writtenS };
  } finally {
    await app.close();
    await store.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Gives the first person every role; returns the catheters in place, and makes new ids begin after the written ones. */
function preparedFor(file: string): number[] {
  const database = new Database(file);
  for (const role of ["prevention", "bedside", "administrator"])
    database
      .prepare("INSERT INTO person_role (person_id, facility_id, role) VALUES (1, ?, ?)")
      .run(benchFacility, role);
  database.prepare("INSERT OR REPLACE INTO id_block (name, next) VALUES ('entry', 1000000000)").run();
  const catheters = database.prepare("SELECT id FROM catheter WHERE removed_at IS NULL ORDER BY id").pluck().all();
  database.close();
  return catheters as number[];
}

function askedOf({ years, wards }: LedgerSize, catheters: readonly number[]): Asked[] {
  const first = new Date(historyEnd - (Math.round(years * 365.25) - 31) * 86_400_000).toISOString().slice(0, 7);
  const wardId = Math.ceil(wards / 2) + 1;
  const get = (what: string, times: number, path: string): Asked => ({ what, times, method: "GET", path: () => path });
  return [
    {
      ...{ what: "review", times: 60, method: "POST" },
      path: (i) => `/catheters/${catheters[i % catheters.length]}/reviews`,
      body: () => ({ at: "2025-12-31T12:00", outcome: "keep", indication: "output-critically-ill" }),
    },
    get("round", 40, `/wards/${wardId}/round`),
    get("home", 4, "/wards/now"),
    get("month of one ward", 10, `/wards/${wardId}/months/2025-12`),
    get("month", 4, "/months/2025-12"),
    get("month's figures", 2, "/months/2025-12/figures"),
    get("oldest month", 4, `/months/${first}`),
    get("oldest month of one ward", 10, `/wards/${wardId}/months/${first}`),
    get("cases", 4, "/cases"),
    get("comparison of 12 months", 2, "/ward-comparison?from=2025-01&to=2025-12"),
    get("audit trail", 20, "/audit"),
    get("audit trail by action", 20, "/audit?action=remove-catheter"),
  ];
}

/** The processor seconds of one request, after two that do not count. */
async function processorS(app: FastifyInstance, { what, times, method, path, body }: Asked): Promise<number> {
  const ask = async (i: number): Promise<void> => {
    const answer = await app.inject({
      ...{ method, url: `/api/v1${path(i)}`, headers: { host: "localhost", "idempotency-key": `bench-${what}-${i}` } },
      ...(body ? { payload: body(i) } : {}),
    });
    if (answer.statusCode !== 200) throw new Error(`${what}: ${answer.statusCode} ${answer.body.slice(0, 300)}`);
  };
  await ask(0);
  await ask(1);
  const began = process.cpuUsage();
  for (let i = 0; i < times; i++) await ask(i + 2);
  const { user, system } = process.cpuUsage(began);
  return (user + system) / 1_000_000 / times;
}
