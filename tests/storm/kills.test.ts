import { randomInt } from "node:crypto";
import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { call } from "../../shared/call.ts";
import { openStore } from "../../src/store/open-store.ts";
import { verifyLedger } from "../../src/usecases/jobs/check-ledger.ts";
import { firstActor } from "../../src/usecases/settings/find-facility.ts";
import { onEachDatabase, type TestDatabase } from "../databases/databases.ts";
import { openHospital } from "../databases/hospital.ts";
import { rawQuery } from "../databases/raw-query.ts";
import { chanceOf } from "../ledger/chance.ts";
import { type Service, startService } from "./killable-server.ts";

/** Of the service's own process, with SIGKILL; the database server lives on. */
const kills = Number(process.env.KILLS ?? 3);
const firstSeed = Number(process.env.SEED ?? randomInt(1_000_000));
const writers = 50;
/** On a machine that is busy with other work, five times as long as the start that no kill came before. */
const readyWithinMs = 10_000;
const patience = { timeout: 30_000, interval: 10 };

/** One creation that a writer sent, and what it was told, when it was told anything. */
interface Sent {
  readonly key: string;
  answer: { stayId: number } | null;
}

onEachDatabase(`the service killed while ${writers} write, SEED=${firstSeed} KILLS=${kills}`, (fresh) => {
  let database: TestDatabase;
  let wardId: number;
  beforeAll(async () => {
    database = await fresh();
    const hospital = await openHospital(database.url, { now: Date.UTC(2026, 0, 1) });
    wardId = await hospital.addWard("3E");
    await hospital.store.close();
    return () => database.drop();
  });
  let service: Service | undefined;
  afterAll(() => service?.stop());

  const admit = (base: string, key: string) => {
    const input = { wardId, identifier: `P-${key}`, number: `S-${key}`, admittedAt: "2026-11-20T09:00", bed: "1" };
    return call(endpoints.admitPatient, input, { base, key });
  };

  /** Writes until the service is gone. */
  async function write({ base }: Service, name: string, sent: Sent[]): Promise<void> {
    for (let i = 0; ; i++) {
      const one: Sent = { key: `${name}-${i}`, answer: null };
      sent.push(one);
      try {
        one.answer = await admit(base, one.key);
      } catch (error) {
        // Nobody answers any more, or the answer broke off: nothing was acknowledged.
        if (error instanceof TypeError || String(error).includes("in a form that is not known here")) return;
        throw error;
      }
    }
  }

  it(
    "has every acknowledged write once and none half, and is ready again in time",
    async () => {
      let acknowledged = 0;
      let unanswered = 0;
      let firstStartMs: number | null = null;
      for (let round = 0; round < kills; round++) {
        const chance = chanceOf(firstSeed + round);
        service = await startService(database.url);
        firstStartMs ??= service.readyAfterMs;
        expect(service.readyAfterMs).toBeLessThan(Math.max(readyWithinMs, 5 * firstStartMs));
        const sent: Sent[] = [];
        const writing = Array.from({ length: writers }, (_, w) => write(service as Service, `${round}-${w}`, sent));
        // In the midst of it: some were answered, all go on.
        await expect.poll(() => sent.filter(({ answer }) => answer !== null).length, patience).toBeGreaterThan(writers);
        await new Promise((resolve) => setTimeout(resolve, chance.below(400)));
        await service.kill();
        await Promise.all(writing);
        acknowledged += sent.filter(({ answer }) => answer !== null).length;
        unanswered += sent.filter(({ answer }) => answer === null).length;
        await checkRecord(sent);
        service = await startService(database.url);
        expect(service.readyAfterMs).toBeLessThan(Math.max(readyWithinMs, 5 * firstStartMs));
        // Sent again under their keys, all of them are there once, and those that were told are told the same.
        for (const one of sent) {
          const { stayId } = await admit(service.base, one.key);
          expect(one.answer?.stayId ?? stayId).toBe(stayId);
        }
        await service.stop();
        await checkRecord(sent.map(({ key }) => ({ key, answer: { stayId: 0 } })));
      }
      process.stdout.write(
        `SEED=${firstSeed}: ${acknowledged} acknowledged, ${unanswered} cut off by ${kills} kills\n`,
      );
      expect(acknowledged).toBeGreaterThan(kills * writers);
      expect(unanswered).toBeGreaterThan(0);
    },
    kills * 120_000,
  );

  /** Each stay with its ward stay, its audit entry and its kept answer, or nothing of it; and the ledger is right. */
  async function checkRecord(sent: readonly Sent[]): Promise<void> {
    const count = async (sql: string) =>
      new Map((await rawQuery(database.url, sql)).map((row) => [row.k, Number(row.n)]));
    const stays = await count("SELECT number AS k, count(*) AS n FROM stay GROUP BY number");
    const wardStays = await count(
      "SELECT s.number AS k, count(*) AS n FROM stay s JOIN ward_stay w ON w.stay_id = s.id GROUP BY s.number",
    );
    const answers = await count(
      "SELECT key AS k, count(*) AS n FROM idempotency_key WHERE body IS NOT NULL GROUP BY key",
    );
    const entries = await rawQuery(database.url, "SELECT details FROM audit_entry WHERE action = 'admit-patient'");
    for (const { key, answer } of sent) {
      const found = [stays.get(`S-${key}`) ?? 0, wardStays.get(`S-${key}`) ?? 0, answers.get(key) ?? 0];
      expect(answer === null ? [[0, 0, 0].join(), [1, 1, 1].join()] : [[1, 1, 1].join()], key).toContain(found.join());
    }
    expect(entries).toHaveLength([...stays.values()].reduce((sum, n) => sum + n, 0));
    const store = openStore(database.url);
    const actor = await firstActor(store);
    if (!actor) throw new Error("nobody is there");
    expect((await verifyLedger({ store, actor, now: Date.UTC(2026, 10, 30) })).differences).toEqual([]);
    await store.close();
  }
});
