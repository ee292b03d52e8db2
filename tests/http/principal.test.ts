import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { buildApp } from "../../src/http/app.ts";
import { localPrincipal } from "../../src/http/principal.ts";
import { openStore } from "../../src/store/open-store.ts";
import { freshSqlite } from "../databases/databases.ts";
import { lookedAt } from "./alder-bay.ts";
import { type Door, openDoor } from "./door.ts";

let door: Door;

beforeAll(async () => {
  door = await openDoor(await freshSqlite());
});

afterAll(() => door?.close());

const me = "/api/v1/me";

describe("who acts while nobody can sign in", () => {
  it.each(["127.0.0.1", "127.3.2.1", "::1", "::ffff:127.0.0.1"])(
    "this machine itself, at %s",
    async (remoteAddress) => {
      const response = await door.app.inject({ url: me, remoteAddress, headers: { host: "localhost:8460" } });
      expect([response.statusCode, response.json().name]).toEqual([200, "Robin Vale"]);
    },
  );

  it.each([
    ["another machine", { remoteAddress: "10.0.0.7" }],
    ["another machine, by IPv6", { remoteAddress: "fe80::1" }],
    ["an address that looks like this machine's", { remoteAddress: "::ffff:10.127.0.1" }],
    ["a page of another site that lets its name point here", { headers: { host: "evil.example:8460" } }],
    ["a name that only begins like this machine's", { headers: { host: "127.0.0.1.evil.example" } }],
    [
      "a proxy that claims to speak for this machine",
      { remoteAddress: "10.0.0.7", headers: { "x-forwarded-for": "127.0.0.1" } },
    ],
  ])("nobody from %s", async (_who, request) => {
    const response = await door.app.inject({ url: me, ...request });
    expect([response.statusCode, response.json().code]).toEqual([401, "not-signed-in"]);
  });

  it("in the demo, the person whose number is given, in the facility they belong to", async () => {
    const { elsewhere, manager } = door.hospital.people;
    const nameOf = async (number: number) =>
      (await door.app.inject({ url: me, headers: { "x-demo-person": String(number) } })).json().name;
    expect([await nameOf(manager), await nameOf(elsewhere)]).toEqual(["Jude Okafor", "Robin Vale"]);
    for (const number of ["0", "-1", "1e1", "99999999", "99999999999", "", "manager"]) {
      const response = await door.app.inject({ url: me, headers: { "x-demo-person": number } });
      expect([response.statusCode, response.json().code]).toEqual([401, "not-signed-in"]);
    }
  });

  it("outside the demo, the first person, whatever number is given", async () => {
    const { store, people } = door.hospital;
    const principalOf = localPrincipal({ store, demo: false });
    const app = await buildApp({ store, clock: () => lookedAt, principalOf, version: "0" });
    const response = await app.inject({ url: me, headers: { "x-demo-person": String(people.manager) } });
    expect(response.json().name).toBe("Robin Vale");
    await app.close();
  });

  it("nobody before a facility is set up", async () => {
    const database = await freshSqlite();
    const store = openStore(database.url);
    const principalOf = localPrincipal({ store, demo: false });
    const app = await buildApp({ store, clock: () => lookedAt, principalOf, version: "0" });
    expect((await app.inject(me)).statusCode).toBe(401);
    await app.close();
    await store.close();
    await database.drop();
  });
});
