import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import pg from "pg";
import { migrate } from "../../src/store/migrate.ts";
import { startPostgres } from "../postgres.mjs";
import { type BareInserts, barePostgres, bareSqlite } from "./bare-inserts.ts";
import type { BenchLine, BenchResult } from "./bench-line.ts";
import { startBareRoute, startService } from "./child-server.ts";
import { type FullWard, fillWard } from "./full-ward.ts";
import { type BenchRequest, type Latencies, measureHttp } from "./http-client.ts";

const clientCounts = [1, 50] as const;

/** How much is asked. */
export interface RecordingSize {
  readonly patients: number;
  readonly reviews: number;
  readonly rounds: number;
}

/**
 * A review recorded over HTTP with its audit entry against a bare durable insert on the same database, and a round read
 * over HTTP, the view recorded, against a bare route with the same bytes; on both databases, with 1 and 50 clients.
 */
export async function benchRecording(size: RecordingSize): Promise<BenchResult> {
  const folder = mkdtempSync(join(tmpdir(), "dwell-bench-"));
  const server = await startPostgres({ durable: true });
  try {
    const file = join(folder, "ledger.sqlite");
    const sqlite = await benchDatabase("SQLite", file, { folder, size, bare: () => bareSqlite(join(folder, "bare")) });
    const [ours, bare] = [await freshDatabase(server.url, "ours"), await freshDatabase(server.url, "bare")];
    const options = { folder, size, bare: () => barePostgres(bare) };
    const postgres = await benchDatabase("PostgreSQL", ours, options);
    return {
      lines: [...sqlite.lines, ...postgres.lines],
      notes: [
        `Recording: ${size.patients} catheters on the ward; server, PostgreSQL and clients share the machine. The aims are a review within 4 times the bare insert, and 400 rounds a second.`,
        ...sqlite.notes,
        ...postgres.notes,
      ],
    };
  } finally {
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function freshDatabase(server: string, name: string): Promise<string> {
  const client = new pg.Client({ connectionString: server });
  await client.connect();
  await client.query(`CREATE DATABASE bench_${name}`);
  await client.end();
  const url = new URL(server);
  url.pathname = `bench_${name}`;
  return url.href;
}

interface BenchOptions {
  readonly folder: string;
  readonly size: RecordingSize;
  readonly bare: () => BareInserts | Promise<BareInserts>;
}

async function benchDatabase(name: string, url: string, { folder, size, bare }: BenchOptions): Promise<BenchResult> {
  await migrate(url);
  const ward = await fillWard(url, { now: Date.now(), patients: size.patients });
  const service = await startService(url);
  const inserts = await bare();
  const lines: BenchLine[] = [];
  const notes: string[] = [];
  try {
    await measureHttp(service.base, { clients: 4, count: 100 }, reviewOf(ward, "warm"));
    for (const clients of clientCounts) {
      const count = clients === 1 ? Math.ceil(size.reviews / 4) : size.reviews;
      const review = await measureHttp(service.base, { clients, count }, reviewOf(ward, `${clients}`));
      const insert = await inserts.measure({ clients, count });
      const what = `review, ${name}, ${clients} client${clients === 1 ? "" : "s"}`;
      lines.push(...latencyLines(what, review, "bare durable insert", insert));
      notes.push(throughputNote(what, review, insert));
    }
    const { bytes } = await measureHttp(service.base, { clients: 1, count: 20 }, roundOf(ward));
    const answer = join(folder, `${name}.json`);
    writeFileSync(answer, bytes);
    const route = await startBareRoute(answer);
    for (const clients of clientCounts) {
      const round = await measureHttp(service.base, { clients, count: size.rounds }, roundOf(ward));
      const plain = await measureHttp(route.base, { clients, count: size.rounds * 4 }, () => ({
        method: "GET",
        path: "/",
      }));
      const what = `round of ${size.patients}, ${name}, ${clients} client${clients === 1 ? "" : "s"}`;
      lines.push(...latencyLines(what, round, "bare route, same bytes", plain));
      notes.push(throughputNote(what, round, plain));
    }
    await route.stop();
  } finally {
    await inserts.close();
    await service.stop();
  }
  return { lines, notes };
}

function reviewOf({ catheterIds }: FullWard, run: string): (i: number) => BenchRequest {
  return (i) => ({
    method: "POST",
    path: `/api/v1/catheters/${catheterIds[i % catheterIds.length]}/reviews`,
    headers: { "idempotency-key": `${run}-${i}` },
    body: JSON.stringify({ at: new Date().toISOString(), outcome: "keep", indication: "perioperative" }),
  });
}

function roundOf({ wardId }: FullWard): () => BenchRequest {
  return () => ({ method: "GET", path: `/api/v1/wards/${wardId}/round` });
}

type Measured = Omit<Latencies, "bytes">;

function latencyLines(what: string, ours: Measured, baseline: string, theirs: Measured): BenchLine[] {
  return [
    { what: `${what}, median`, oursS: ours.medianS, baseline, baselineS: theirs.medianS },
    { what: `${what}, 95th percentile`, oursS: ours.p95S, baseline, baselineS: theirs.p95S },
  ];
}

function throughputNote(what: string, ours: Measured, theirs: Measured): string {
  const ratio = (theirs.perSecond / ours.perSecond).toFixed(2);
  return `${what}: ${ours.perSecond.toFixed(0)} a second, the baseline ${theirs.perSecond.toFixed(0)}: ${ratio} times as many.`;
}
