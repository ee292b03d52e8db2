import { randomInt } from "node:crypto";
import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { verifyLedger } from "../../src/usecases/jobs/check-ledger.ts";
import { findPerson } from "../../src/usecases/settings/find-person.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { chanceOf } from "../ledger/chance.ts";
import { type Doors, openDoors } from "./doors.ts";
import { checkRace } from "./race-checks.ts";
import { type Racers, startRace } from "./race-moves.ts";

const races = Number(process.env.RACES ?? 100);
const firstSeed = Number(process.env.SEED ?? randomInt(1_000_000));
const clients = 8;

onEachDatabase(`eight clients on one patient, SEED=${firstSeed} RACES=${races}`, (fresh) => {
  let doors: Doors;
  beforeAll(async () => {
    doors = await openDoors(await fresh());
  });
  afterAll(() => doors?.close());

  it(
    "leave no overlap, lose no change, and each change has its audit entry",
    async () => {
      const outcomes = { done: 0, refused: new Map<string, number>() };
      for (let seed = firstSeed; seed < firstSeed + races; seed++) {
        const chance = chanceOf(seed);
        const racers: Racers = await startRace(doors, seed);
        const moves = Array.from({ length: clients }, (_, client) => racers.draw(chance, client));
        const results = await Promise.all(moves.map(async (move) => ({ move, answer: await move.run() })));
        for (const { answer } of results) {
          if (answer.refused === null) outcomes.done += 1;
          else outcomes.refused.set(answer.refused, (outcomes.refused.get(answer.refused) ?? 0) + 1);
        }
        await checkRace(doors, racers, results, `SEED=${seed}: ${moves.map(({ said }) => said).join(", ")}`);
      }
      const actor = await findPerson(doors.store, doors.hospital.people.prevention);
      if (!actor) throw new Error("nobody is there");
      const { differences } = await verifyLedger({ store: doors.store, actor, now: Date.UTC(2026, 10, 20, 15) });
      expect(differences).toEqual([]);
      const refused = [...outcomes.refused].map(([code, count]) => `${count} ${code}`).join(", ");
      process.stdout.write(`SEED=${firstSeed}, ${races} races: ${outcomes.done} done; refused: ${refused}\n`);
      // Both have to happen, or nothing was raced.
      expect(outcomes.done).toBeGreaterThan(races);
      expect(outcomes.refused.size).toBeGreaterThan(2);
    },
    races * 5_000,
  );
});

it("the endpoints that are raced are there", () => {
  expect(Object.keys(endpoints)).toEqual(expect.arrayContaining(["mergePatients", "movePatient", "removeCatheter"]));
});
