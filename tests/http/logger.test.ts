import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { safeLogger } from "../../src/http/logger.ts";
import { freshSqlite } from "../databases/databases.ts";
import { identifiers } from "./alder-bay.ts";
import { type Door, openDoor } from "./door.ts";

const lines: string[] = [];
const logger = safeLogger({ level: "debug", stream: { write: (line) => void lines.push(line) } });

let door: Door;

beforeAll(async () => {
  door = await openDoor(await freshSqlite(), { logger });
});

afterAll(() => door?.close());

/** What must not be in a line: the patients, the people, and what only stands in addresses and headers. */
const canaries = [...identifiers, "Kit Sandoval", "/2026-11", "Canary", "x-demo-person", "127.0.0.1"];

describe("the log", () => {
  it("has one line for each answer, with the route's pattern and nothing of the request", async () => {
    const ward = door.hospital.wards["3E"];
    lines.length = 0;
    await door.get("/api/v1/months/2026-11").expect(200);
    await door.get(`/api/v1/wards/${ward}/days/2026-11-04?name=Canary`).expect(422);
    await door.get("/Canary").expect(404);
    const logged = lines.map((line) => JSON.parse(line));
    expect(logged.map(({ route, status, method }) => [method, route, status])).toEqual([
      ["GET", "/api/v1/months/:month", 200],
      ["GET", "/api/v1/wards/:wardId/days/:day", 422],
      ["GET", null, 404],
    ]);
    for (const line of logged)
      expect(Object.keys(line).sort()).toEqual([
        "durationMs",
        "level",
        "method",
        "msg",
        "reqId",
        "route",
        "status",
        "time",
      ]);
  });

  it("never carries who a patient or a person is, whatever is asked", async () => {
    const ward = door.hospital.wards["3E"];
    lines.length = 0;
    await door.get(`/api/v1/wards/${ward}/days/2026-11-04`, "bedside").expect(200);
    await door.get("/api/v1/me", "bedside").expect(200);
    await door.get(`/api/v1/wards/${identifiers[0]}/days/2026-11-04`).expect(422);
    await door.get(`/api/v1/months/2026-11?patient=${identifiers[1]}`).set("user-agent", "Canary").expect(422);
    await door.app.inject({ method: "POST", url: `/api/v1/me?${identifiers[0]}`, payload: { name: "Canary" } });
    await door.app.inject(`/%zz${identifiers[0]}`);
    const log = lines.join("");
    expect(lines.length).toBeGreaterThan(4);
    for (const canary of canaries) expect(log).not.toContain(canary);
  });

  it("leaves out what errors say, also of their causes, and tells where they happened", () => {
    lines.length = 0;
    const error = Object.assign(new TypeError("Canary in the message"), { code: "P2002", meta: { name: "Canary" } });
    error.cause = new Error("Canary\nin two lines at Canary");
    logger.error({ err: error }, "a request failed");
    logger.error(error);
    logger.info({ req: { id: "r-1", url: "/Canary", headers: { cookie: "Canary" } } }, "a request");
    expect(lines).toHaveLength(3);
    expect(lines.join("")).not.toContain("Canary");
    const [first, second, third] = lines.map((line) => JSON.parse(line));
    for (const { err } of [first, second])
      expect(err).toMatchObject({ kind: "TypeError", code: "P2002", cause: { kind: "Error" } });
    expect(first.err.at[0]).toContain("logger.test.ts");
    expect(third.req).toEqual({ id: "r-1" });
  });
});
