import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { apiBase } from "../../shared/api-base.ts";
import type { Endpoint } from "../../shared/endpoint.ts";
import { problemDocument } from "../../shared/problem-document.ts";
import { freshSqlite } from "../databases/databases.ts";
import { type Door, openDoor } from "./door.ts";

let door: Door;

beforeAll(async () => {
  door = await openDoor(await freshSqlite());
});

afterAll(() => door?.close());

/** The address of an endpoint, with these values in the place of its parameters. */
function addressOf(path: string, values: Readonly<Record<string, string>> = {}): string {
  const known: Readonly<Record<string, string>> = { month: "2026-11", day: "2026-11-04", ...values };
  return apiBase + path.replaceAll(/\{(\w+)\}/g, (_, name: string) => known[name] ?? String(door.hospital.wards["3E"]));
}

/** Sends what an endpoint takes, as the person who may do most. */
function send({ method, effect }: Endpoint, url: string, body: object = {}) {
  const headers = {
    "x-demo-person": String(door.hospital.people.prevention),
    ...(effect === "creates" ? { "idempotency-key": "a-key" } : {}),
    ...(effect === "updates" ? { "if-match": '"1"' } : {}),
  };
  return door.app.inject({ method, url, headers, ...(method === "GET" ? {} : { payload: body }) });
}

const all: [string, Endpoint][] = Object.entries(endpoints);
const withNumber = all.filter(([, { path }]) => /\{\w+Id\}/.test(path));

describe("every endpoint", () => {
  it.each(all)("%s refuses a field that is not known", async (_name, one) => {
    const response = await send(one, `${addressOf(one.path)}?strange=3E`);
    expect(response.statusCode).toBe(422);
    expect(response.headers["content-type"]).toContain("application/problem+json");
    const { errors } = problemDocument.parse(response.json());
    expect(errors.filter(({ code }) => code === "field-unknown").map(({ pointer }) => pointer)).toEqual(["/strange"]);
  });

  it.each(withNumber)("%s refuses what is no number of a record", async (_name, one) => {
    const [, name = ""] = /\{(\w+Id)\}/.exec(one.path) ?? [];
    for (const number of ["0", "-1", "1.5", "0x1", "3E", "99999999999", "2147483648", "%20"]) {
      const response = await send(one, addressOf(one.path, { [name]: number }));
      const { errors } = problemDocument.parse(response.json());
      expect(response.statusCode).toBe(422);
      expect(errors).toContainEqual(expect.objectContaining({ code: "field-unreadable", pointer: `/${name}` }));
    }
  });

  it("refuses what is no month, and never fails for one that is", async () => {
    for (const month of ["2026-13", "2026-00", "2026-1", "26-11", "2026-11-01", "now", "2026/11"]) {
      const { body } = await door.get(`/api/v1/months/${encodeURIComponent(month)}`).expect(422);
      expect([body.code, body.errors[0].pointer]).toEqual(["field-unreadable", "/month"]);
      expect(JSON.stringify(body)).not.toContain(`"${month}"`);
    }
    for (const month of ["0000-01", "0001-01", "1883-11", "1970-01", "9999-12"]) {
      const { status } = await door.get(`/api/v1/months/${month}`);
      expect([200, 422]).toContain(status);
    }
  });

  it("names all faults at once, each with its place and remedy", async () => {
    const { body } = await door.get("/api/v1/wards/x/months/y?from=1&to=2").expect(422);
    const { errors } = problemDocument.parse(body);
    expect(errors.map(({ pointer }) => pointer)).toEqual(["/wardId", "/month", "/from", "/to"]);
    for (const { detail, remedy } of errors) expect([detail, remedy].every((text) => /\w.*\.$/.test(text))).toBe(true);
  });
});

describe("addresses at which nothing is", () => {
  it.each(["/api/v1/nothing", "/api/v2/me", "/nothing.html", "/api/v1/wards/1"])(
    "%s answers 404 with a problem",
    async (path) => {
      const response = await door.get(path).expect(404);
      expect(problemDocument.parse(response.body).code).toBe("address-unknown");
      expect(JSON.stringify(response.body)).not.toContain(path);
    },
  );

  it("answer 405 with the methods that there are, where another method would do", async () => {
    for (const path of ["/api/v1/me", "/api/v1/months/2026-11"]) {
      const response = await door.app.inject({ method: "DELETE", url: path });
      expect([response.statusCode, response.headers.allow]).toEqual([405, "GET, HEAD"]);
      expect(response.json().code).toBe("method-not-allowed");
    }
  });

  it.each([
    ["/api/v1/months/%E0%A4%A", 400, "request-unreadable"],
    ["/%zz", 400, "request-unreadable"],
    ["/api/v1/months/", 422, "field-unreadable"],
    [`/api/v1/months/${"9".repeat(300)}`, 400, "request-unreadable"],
  ])("an address that cannot be read, %.30s, answers %i with a problem", async (url, status, code) => {
    const response = await door.app.inject(url);
    expect([response.statusCode, response.json().code]).toEqual([status, code]);
    expect(response.headers["content-type"]).toContain("application/problem+json");
  });
});
