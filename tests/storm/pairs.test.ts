import { randomInt } from "node:crypto";
import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import type { Endpoint } from "../../shared/endpoint.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { everything } from "../databases/read-back.ts";
import { inputs, type Subjects } from "../http/inputs.ts";
import { situationsIn } from "../http/situations.ts";
import { chanceOf } from "../ledger/chance.ts";
import { type Doors, openDoors } from "./doors.ts";

const pairs = Number(process.env.PAIRS ?? 100);
const firstSeed = Number(process.env.SEED ?? randomInt(1_000_000));

type Name = keyof typeof endpoints;
const creations = (Object.keys(endpoints) as Name[]).filter((name) => endpoints[name].effect === "creates");

/** Rows in all tables that a creation can add to, apart from the audit trail of looking. */
async function rows(doors: Doors): Promise<Record<string, number>> {
  const tables = Object.entries(await everything(doors.store));
  return Object.fromEntries(tables.map(([table, list]) => [table, (list as unknown[]).length]));
}

onEachDatabase(`the same creation twice at once, SEED=${firstSeed} PAIRS=${pairs}`, (fresh) => {
  let doors: Doors;
  beforeAll(async () => {
    doors = await openDoors(await fresh());
  });
  afterAll(() => doors?.close());

  it(
    "makes one record, and both are told the same",
    async () => {
      const done = new Map<string, number>();
      for (let i = 0; i < pairs; i++) {
        // Every kind of creation comes in turn, about a record that nobody has changed yet.
        const name = creations[i % creations.length] as Name;
        const situations = await situationsIn(doors.hospital);
        const input = inputs[name]({ ...situations["own ward"], ...timeOf(name, firstSeed + i) }) as never;
        const key = `pair-${firstSeed}-${i}`;
        const before = await rows(doors);
        const send = (client: number) => doors.ask(endpoints[name] as Endpoint, input, { client, key });
        const [one, two] = await Promise.all([send(0), send(1)]);
        const story = `SEED=${firstSeed}, pair ${i}, ${name}: ${JSON.stringify([one, two])}`;
        expect(two, story).toEqual(one);
        const after = await rows(doors);
        // Sent a third time, later, it is told the same and adds nothing.
        expect(await send(0), story).toEqual(one);
        expect(await rows(doors), story).toEqual(after);
        if (one.refused === null) {
          done.set(name, (done.get(name) ?? 0) + 1);
          expect((after.audit_entry ?? 0) - (before.audit_entry ?? 0), `${story}: one audit entry`).toBe(1);
          expect((after.idempotency_key ?? 0) - (before.idempotency_key ?? 0), story).toBe(1);
        } else expect(after, story).toEqual(before);
      }
      const told = [...done].map(([name, count]) => `${count} ${name}`).join(", ");
      process.stdout.write(`SEED=${firstSeed}, ${pairs} pairs: ${told}\n`);
      // A policy is set and a day counted once; after that, as merges of records that overlap, they are refused alike.
      const once = ["setPolicy", "recordDailyCount", "mergePatients", "unmergePatients"];
      const often = creations.filter((name) => !once.includes(name));
      if (pairs >= creations.length) for (const name of often) expect(done.get(name), name).toBeGreaterThan(0);
    },
    pairs * 10_000,
  );
});

/** Merging wants records that do not overlap; the others happen within the stay. */
function timeOf(name: Name, seed: number): Partial<Subjects> {
  const day = 13 + chanceOf(seed).below(5);
  return name === "recordDailyCount" ? {} : { at: `2026-11-${day}T15:00:00Z` };
}
