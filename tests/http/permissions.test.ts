import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { apiBase, endpoints } from "../../shared/api/index.ts";
import { call } from "../../shared/call.ts";
import { day, month } from "../../shared/day.ts";
import { type Endpoint, endpoint as makeEndpoint } from "../../shared/endpoint.ts";
import { AnsweredProblem } from "../../shared/problem-document.ts";
import { freshSqlite } from "../databases/databases.ts";
import type { AlderBay } from "./alder-bay.ts";
import { type Door, openDoor } from "./door.ts";

type Person = keyof AlderBay["people"];
type Answer = 200 | 403 | 404;

/** What each person gets from each endpoint, asked about ward 3E, which bedside and manager belong to. */
const expected: Record<keyof typeof endpoints, Record<Exclude<Person, "elsewhere">, Answer>> = {
  readMe: { prevention: 200, bedside: 200, manager: 200, administrator: 200 },
  readFacility: { prevention: 200, bedside: 200, manager: 200, administrator: 200 },
  listWards: { prevention: 200, bedside: 200, manager: 200, administrator: 200 },
  readMonth: { prevention: 200, bedside: 200, manager: 200, administrator: 403 },
  readWardMonth: { prevention: 200, bedside: 200, manager: 200, administrator: 403 },
  readWardDay: { prevention: 200, bedside: 200, manager: 403, administrator: 403 },
  readAgreement: { prevention: 200, bedside: 200, manager: 200, administrator: 403 },
};

let door: Door;
let base: string;

beforeAll(async () => {
  door = await openDoor(await freshSqlite());
  base = await door.app.listen({ host: "127.0.0.1", port: 0 });
});

afterAll(() => door?.close());

async function statusOf(endpoint: Endpoint, person: Person, wardId: number): Promise<number> {
  const input = { wardId, month: month.parse("2026-11"), day: day.parse("2026-11-04") };
  const headers = { "x-demo-person": String(door.hospital.people[person]) };
  try {
    await call(endpoint, input as never, { base, headers });
    return 200;
  } catch (error) {
    if (!(error instanceof AnsweredProblem)) throw error;
    return error.document.status;
  }
}

const cases = Object.entries(expected).flatMap(([name, answers]) =>
  Object.entries(answers).map(([person, status]) => [name, person, status] as const),
);

describe("who may ask what", () => {
  it.each(cases)("%s answers a person of the role %s with %i", async (name, person, status) => {
    const endpoint = endpoints[name as keyof typeof endpoints];
    expect(await statusOf(endpoint, person as Person, door.hospital.wards["3E"])).toBe(status);
  });

  it("a person who may not ask at all learns nothing of which wards exist", async () => {
    for (const wardId of [door.hospital.wards["3E"], door.hospital.wards["4N"], 2_000_000_000])
      expect(await statusOf(endpoints.readWardDay, "manager", wardId)).toBe(403);
  });

  it("the client reports an answer that the contract does not know", async () => {
    const other = makeEndpoint({
      ...endpoints.readMe,
      params: {},
      query: {},
      body: {},
      output: endpoints.listWards.output,
    });
    await expect(statusOf(other, "prevention", 1)).rejects.toThrow(`GET /me answered 200 in a form`);
    expect(apiBase).toBe("/api/v1");
  });
});
