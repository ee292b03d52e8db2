import { afterAll, beforeAll, expect, it } from "vitest";
import { documentMaker } from "../../../src/documents/document-maker.ts";
import { type HeavyWork, heavyWorkHere } from "../../../src/http/heavy/heavy-work.ts";
import { findPerson } from "../../../src/usecases/settings/find-person.ts";
import { freshSqlite, type TestDatabase } from "../../databases/databases.ts";
import { type AlderBay, fillAlderBay, lookedAt } from "../alder-bay.ts";

let database: TestDatabase;
let hospital: AlderBay;
let heavy: HeavyWork;

beforeAll(async () => {
  database = await freshSqlite();
  hospital = await fillAlderBay(database.url);
  const documents = documentMaker({ version: "0", browserPath: null });
  heavy = heavyWorkHere({ store: hospital.store, documents });
});
afterAll(async () => {
  await hospital?.store.close();
  await database?.drop();
});

async function read(name: string, input: object, asText: boolean) {
  const actor = await findPerson(hospital.store, hospital.people.prevention);
  if (!actor) throw new Error("the hospital has nobody");
  return heavy.read({ name, input, actor, reach: {}, now: lookedAt, asText });
}

it("answers as the text that is sent, or as data", async () => {
  const text = await read("readWardsNow", {}, true);
  const data = await read("readWardsNow", {}, false);
  // The text holds times as the contract sends them.
  expect(data?.answer).toMatchObject({ at: lookedAt, day: "2026-11-20" });
  expect(JSON.parse(String(text?.answer))).toEqual({
    ...(data?.answer as object),
    at: new Date(lookedAt).toISOString(),
  });
  expect(text?.views).toEqual([]);
});

it("hands over who saw what, and writes nothing itself", async () => {
  const count = () => hospital.store.read(({ db }) => db.auditEntry.count());
  const before = await count();
  const found = await read("listCases", { list: "waiting" }, true);
  expect(found?.views.map(({ action, by }) => [action, by.personId])).toEqual([
    ["view-cases", hospital.people.prevention],
  ]);
  expect(await count()).toBe(before);
});

it("comes to nothing where something has to be written first", async () => {
  const ward = { code: "7W", name: "Ward 7W", type: null, setting: null, beds: null, openedDay: null };
  expect(await read("addWard", ward, true)).toBeNull();
  expect(JSON.stringify(await read("listWards", {}, false))).not.toContain("7W");
});

it("refuses as the use case does", async () => {
  await expect(read("readMonth", { month: "2031-01" }, true)).rejects.toMatchObject({ code: "in-the-future" });
});
