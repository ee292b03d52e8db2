import { randomInt } from "node:crypto";
import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import type { Day } from "../../shared/day.ts";
import type { Endpoint } from "../../shared/endpoint.ts";
import { dayNumber, dayText } from "../../src/domain/days/day-number.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { everything } from "../databases/read-back.ts";
import { workOn } from "../http/import-work.ts";
import { prepared } from "../http/prepared.ts";
import { type Answer, type Asking, type Doors, openDoors } from "./doors.ts";

const pairs = Number(process.env.PAIRS ?? 100);
const firstSeed = Number(process.env.SEED ?? randomInt(1_000_000));

type Name = keyof typeof endpoints;
const creations = (Object.keys(endpoints) as Name[]).filter((name) => endpoints[name].effect === "creates");

/** What has to differ from time to time: a policy follows the one before, a day is counted first once, a month watched. */
function next(name: Name, times: number): object {
  if (name === "setPolicy" || name === "setComparison") return { replaces: times };
  if (name === "watchWard") {
    const month = `${2027 + Math.floor(times / 12)}-${String((times % 12) + 1).padStart(2, "0")}`;
    return { fromMonth: month, toMonth: month };
  }
  return name === "recordDailyCount" ? { day: dayText(dayNumber("2025-01-01" as Day) + times) } : {};
}

/** Rows in all tables that a creation can add to. */
async function rows(doors: Doors): Promise<Record<string, number>> {
  const tables = Object.entries(await everything(doors.store));
  return Object.fromEntries(tables.map(([table, list]) => [table, (list as unknown[]).length]));
}

onEachDatabase(`the same creation twice at once, SEED=${firstSeed} PAIRS=${pairs}`, (fresh) => {
  let doors: Doors;
  let made = 0;
  beforeAll(async () => {
    doors = await openDoors(await fresh());
  });
  afterAll(() => doors?.close());

  /** A patient on which a creation can be done, and its input. */
  async function readyFor(name: Name): Promise<object> {
    const { wards } = doors.hospital;
    const work = () => workOn(doors.store);
    const where = { fresh: () => `PAIR-${++made}`, wardId: wards["3E"], toWardId: wards["4N"], work };
    const ask: Parameters<typeof prepared>[0] = async (endpoint, input) => {
      const { done, refused } = await doors.ask(endpoint, input, { client: made, key: `ready-${++made}` });
      if (done === null) throw new Error(`making ready for ${name} was refused: ${refused}`);
      return done;
    };
    return (await prepared(ask, name, where)).input;
  }

  const send = (name: Name, input: object, by: Asking): Promise<Answer<Endpoint>> =>
    doors.ask(endpoints[name] as Endpoint, input as never, by);

  it(
    "makes one record, and both are told the same",
    async () => {
      const done = new Map<Name, number>();
      for (let i = 0; i < pairs; i++) {
        // Every kind of creation comes in turn, about a record that nobody has changed yet.
        const name = creations[(firstSeed + i) % creations.length] as Name;
        const times = done.get(name) ?? 0;
        const input = { ...(await readyFor(name)), ...next(name, times) };
        const key = `pair-${firstSeed}-${i}`;
        const before = await rows(doors);
        const [one, two] = await Promise.all([
          send(name, input, { client: 0, key }),
          send(name, input, { client: 1, key }),
        ]);
        const story = `SEED=${firstSeed}, pair ${i}, ${name}: ${JSON.stringify([one, two])}`;
        expect([one.refused, two], story).toEqual([null, one]);
        const after = await rows(doors);
        const added = (table: string) => (after[table] ?? 0) - (before[table] ?? 0);
        expect([added("audit_entry"), added("idempotency_key")], story).toEqual([1, 1]);
        // Sent a third time, later, it is told the same and adds nothing.
        expect(await send(name, input, { client: 0, key }), story).toEqual(one);
        expect(await rows(doors), story).toEqual(after);
        // The same key of somebody else is another creation, done or refused for itself.
        const theirs = await send(name, input, { client: 1, key, person: "bedside" });
        expect(theirs.done, story).not.toEqual(one.done);
        const other = creations.find((another) => another !== name) as Name;
        const reused = await send(other, await readyFor(other), { client: 1, key });
        expect(reused.refused, story).toBe("idempotency-key-reused");
        done.set(name, times + 1);
      }
      const told = [...done].map(([name, count]) => `${count} ${name}`).join(", ");
      process.stdout.write(`SEED=${firstSeed}, ${pairs} pairs: ${told}\n`);
      if (pairs >= creations.length) expect([...done.keys()].sort()).toEqual([...creations].sort());
    },
    pairs * 10_000,
  );
});
