import { afterAll, beforeAll, expect, it } from "vitest";
import { askHeavy } from "../../../src/http/heavy/ask-heavy.ts";
import type { HeavyAnswer, HeavyWork } from "../../../src/http/heavy/heavy-work.ts";
import type { Act } from "../../../src/usecases/act.ts";
import { freshSqlite, type TestDatabase } from "../../databases/databases.ts";
import { type Hospital, openHospital } from "../../databases/hospital.ts";

let database: TestDatabase;
let hospital: Hospital;
let act: Act;

beforeAll(async () => {
  database = await freshSqlite();
  hospital = await openHospital(database.url, { now: Date.UTC(2026, 9, 1) });
  act = hospital.at(Date.UTC(2026, 10, 20));
});
afterAll(async () => {
  await hospital.store.close();
  await database.drop();
});

/** Work that comes to these answers, the last one for ever. */
function heavyWith(...answers: readonly HeavyAnswer[]): HeavyWork & { asked: number } {
  const heavy = {
    asked: 0,
    read: async () => answers[Math.min(heavy.asked++, answers.length - 1)] ?? null,
    make: () => Promise.reject(new Error("no file is made here")),
    close: () => Promise.resolve(),
  };
  return heavy;
}

const asked = { name: "listCases", input: {}, reach: {}, asText: true } as const;

it("asks again after writing what time alone has changed", async () => {
  const heavy = heavyWith(null, { answer: "[]", views: [] });
  expect(await askHeavy(act, heavy, asked)).toBe("[]");
  expect(heavy.asked).toBe(2);
});

it("says whose fault it is that a read writes each time", async () => {
  await expect(askHeavy(act, heavyWith(null), asked)).rejects.toThrow("listCases has to write");
});

it("stores what was seen before it answers, and answers nothing that cannot be stored", async () => {
  const by = { facilityId: act.actor.facilityId, personId: act.actor.personId, now: act.now };
  const answer = { answer: "[]", views: [{ by, action: "view-cases", details: { list: "waiting" } } as const] };
  expect(await askHeavy(act, heavyWith(answer), asked)).toBe("[]");
  const stored = await act.store.read(({ db }) => db.auditEntry.findMany({ where: { action: "view-cases" } }));
  expect(stored.map(({ details }) => details)).toEqual(['{"list":"waiting"}']);
  const full = { ...act, store: { ...act.store, noteView: () => Promise.reject(new Error("the disk is full")) } };
  await expect(askHeavy(full, heavyWith(answer), asked)).rejects.toThrow("the disk is full");
});
