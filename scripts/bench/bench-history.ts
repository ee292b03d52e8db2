import { copyFileSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import type { FastifyInstance } from "fastify";
import { buildApp } from "../../src/http/app.ts";
import { localPrincipal } from "../../src/http/principal.ts";
import { openStore } from "../../src/store/open-store.ts";
import { watchSignedMonths } from "../../src/usecases/months/watch-signed-months.ts";
import { type BenchLine, type BenchResult, written } from "./bench-line.ts";
import { benchFacility, historyEnd } from "./history-size.ts";
import { spread } from "./http-client.ts";
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
  const sizes = [shortYears, longYears].map((years): LedgerSize => ({ ...size, years, care: true }));
  const opened = await Promise.all(sizes.map(openHistory));
  const [short, long] = opened;
  if (!short || !long) throw new Error("two histories are compared");
  try {
    const lines: BenchLine[] = [];
    for (const [i, asked] of short.asked.entries()) {
      const askedOfLong = long.asked[i] ?? asked;
      const [baselineS, oursS] = await inTurns(asked.times, [() => ask(short, asked), () => ask(long, askedOfLong)]);
      lines.push({
        ...{ what: `${asked.what}, ${size.wards} wards, ${longYears} y (processor)`, oursS },
        ...{ baseline: `the same at ${shortYears} y`, baselineS },
      });
    }
    const notes = [
      `History: ${size.wards} wards of ${size.bedsAWard} beds, all taken, with reviews, cultures and audit trail; SQLite, median processor time of a request, the two histories in turns. The aim is a ratio of 1.2.`,
      written(`The histories of ${shortYears} and ${longYears} years`, short.writtenS + long.writtenS),
    ];
    return { lines, notes };
  } finally {
    for (const one of opened) await one.close();
  }
}

/** A history that is served, and what it is asked. */
interface History {
  readonly app: FastifyInstance;
  readonly asked: readonly Asked[];
  readonly writtenS: number;
  /** Counts requests, so that each creation has a key of its own. */
  requests: number;
  close(): Promise<void>;
}

async function openHistory(size: LedgerSize): Promise<History> {
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
  const close = async () => {
    await app.close();
    await store.close();
    rmSync(folder, { recursive: true, force: true });
  };
  return { app, asked: askedOf(size, catheters), writtenS, requests: 0, close };
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
      ...{ what: "review", times: 40, method: "POST" },
      path: (i) => `/catheters/${catheters[i % catheters.length]}/reviews`,
      body: () => ({ at: "2025-12-31T12:00", outcome: "keep", indication: "output-critically-ill" }),
    },
    get("round", 40, `/wards/${wardId}/round`),
    get("home", 9, "/wards/now"),
    get("month of one ward", 10, `/wards/${wardId}/months/2025-12`),
    get("month", 9, "/months/2025-12"),
    get("month's figures", 5, "/months/2025-12/figures"),
    get("oldest month", 9, `/months/${first}`),
    get("oldest month of one ward", 10, `/wards/${wardId}/months/${first}`),
    get("cases", 9, "/cases"),
    get("comparison of 12 months", 3, "/ward-comparison?from=2025-01&to=2025-12"),
    get("audit trail", 20, "/audit"),
    get("audit trail by action", 20, "/audit?action=remove-catheter"),
  ];
}

async function ask(history: History, { what, method, path, body }: Asked): Promise<void> {
  const i = history.requests++;
  const answer = await history.app.inject({
    ...{ method, url: `/api/v1${path(i)}`, headers: { host: "localhost", "idempotency-key": `bench-${i}` } },
    ...(body ? { payload: body(i) } : {}),
  });
  if (answer.statusCode !== 200) throw new Error(`${what}: ${answer.statusCode} ${answer.body.slice(0, 300)}`);
}

/** The median processor seconds of each of two pieces of work, done in turns; the first three turns do not count. */
async function inTurns(
  times: number,
  work: readonly [() => Promise<void>, () => Promise<void>],
): Promise<[number, number]> {
  const took: [number[], number[]] = [[], []];
  for (let i = 0; i < times + 3; i++) {
    for (const side of [0, 1] as const) {
      const began = process.cpuUsage();
      await work[side]();
      const { user, system } = process.cpuUsage(began);
      if (i >= 3) took[side].push((user + system) / 1_000_000);
    }
  }
  return [spread(took[0]).medianS, spread(took[1]).medianS];
}
