import { randomInt } from "node:crypto";
import { afterAll, beforeAll, expect, it } from "vitest";
import { openStore } from "../../src/store/open-store.ts";
import type { Store } from "../../src/store/store.ts";
import { onEachDatabase, type TestDatabase } from "../databases/databases.ts";
import { censusInstants, localDay } from "./census-instants.ts";
import { checkLedger, checkRun, story } from "./check-run.ts";
import type { Count } from "./oracle.ts";
import { expectEnough, summaryLine } from "./outcome-summary.ts";
import { type Outcome, type RandomRun, randomHospital } from "./random-hospital.ts";
import { openReader, type RecordReader } from "./read-record.ts";
import { dayMs } from "./scene.ts";

const runs = Number(process.env.RUNS ?? 100);
const firstSeed = Number(process.env.SEED ?? randomInt(1_000_000));
/** Generous: the machine may be busy with other tests. */
const longestRunMs = 20_000;

/** Each client of PostgreSQL has connections of its own; on SQLite all share the one process that has the file. */
const storeCount = { sqlite: 1, postgresql: 8 } as const;

onEachDatabase(`the ledger after random edits, SEED=${firstSeed} RUNS=${runs}`, (fresh, kind) => {
  let database: TestDatabase;
  let stores: Store[];
  let reader: RecordReader;

  beforeAll(async () => {
    database = await fresh();
    stores = Array.from({ length: storeCount[kind] }, () => openStore(database.url));
    reader = await openReader(database);
  });

  afterAll(async () => {
    await Promise.all([reader.close(), ...stores.map((store) => store.close())]);
    await database.drop();
  });

  it(
    "equals a separate count that goes through the census instants, and so does the report with its open days",
    async () => {
      const outcomes: Outcome[] = [];
      const counts: Count[] = [];
      for (let seed = firstSeed; seed < firstSeed + runs; seed++) {
        const look = (run: RandomRun) => void checkLedger(run, () => story(seed, run));
        const run = await randomHospital({ stores, reader, look }, seed);
        const read = { ...run, now: readingTime(run, seed) };
        counts.push(await checkRun(first(stores), read, () => story(seed, read)));
        outcomes.push(...run.outcomes);
      }
      const summary = { runs, outcomes, counts };
      process.stdout.write(`${kind}, SEED=${firstSeed}: ${summaryLine(summary)}\n`);
      expectEnough(summary);
    },
    runs * longestRunMs,
  );

  it("is compared in earnest: a single wrong row is found", async () => {
    const { run, found: row } = await firstRun(({ ledger }) => ledger[0]);
    const wrong = `catheter = NOT catheter WHERE patient_id = ${row.patientId} AND day = ${row.day}`;
    await reader.run(`UPDATE patient_day SET ${wrong}`);
    const record = await reader.read(run.actor.facilityId);
    expect(() => checkLedger({ ...run, record }, () => "planted")).toThrow("planted");
  });

  it("is compared in earnest: a single note out of place is found", async () => {
    const { run, found: note } = await firstRun(({ notes, stays, catheters }) => {
      const standing = new Set(stays.filter((stay) => stay.voidKey === 0).map((stay) => stay.id));
      const about = new Map(catheters.filter((c) => c.voidKey === 0).map((c) => [c.id, c.stayId]));
      return notes.find((one) => one.voidKey === 0 && standing.has(about.get(one.catheterId) ?? 0));
    });
    const early = kind === "sqlite" ? "at - 10000 * 86400000" : "at - interval '10000 days'";
    await reader.run(`UPDATE catheter_note SET at = ${early} WHERE id = ${note.id}`);
    const record = await reader.read(run.actor.facilityId);
    expect(() => checkLedger({ ...run, record }, () => "planted")).toThrow("planted");
  });

  /** The first run that leaves what is looked for; hardly any leaves nothing. */
  async function firstRun<T>(
    look: (record: RandomRun["record"]) => T | undefined,
  ): Promise<{ run: RandomRun; found: T }> {
    for (let seed = firstSeed; seed < firstSeed + 20; seed++) {
      const run = await randomHospital({ stores, reader, look: () => undefined }, seed);
      const found = look(run.record);
      if (found !== undefined) return { run, found };
    }
    throw new Error("20 runs left nothing to plant an error in");
  }
});

function first(stores: readonly Store[]): Store {
  const [store] = stores;
  if (!store) throw new Error("there is no store");
  return store;
}

/** When the report is read: some days after the last edit or, in every second run, at a census to the millisecond. */
function readingTime({ record, now }: RandomRun, seed: number): number {
  const later = now + 3 * dayMs;
  if (seed % 2 === 0) return later;
  const day = localDay(record.zone, later);
  return censusInstants(record, day - 1, day).at(-1)?.at ?? later;
}
