import { connect } from "node:net";
import { gzipSync } from "node:zlib";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { freshSqlite } from "../databases/databases.ts";
import { rawQuery } from "../databases/raw-query.ts";
import { type Door, openDoor } from "./door.ts";
import { parsingCases, refusedOnPurpose } from "./parsing-cases.ts";

describe("a body at the door", () => {
  let door: Door;
  let port: number;
  let count: () => Promise<number>;
  beforeAll(async () => {
    const database = await freshSqlite();
    door = await openDoor(database);
    port = Number(new URL(await door.app.listen({ host: "127.0.0.1", port: 0 })).port);
    count = async () => (await rawQuery(database.url, "SELECT id FROM patient")).length;
  });
  afterAll(() => door?.close());

  const url = () => `/api/v1/wards/${door.hospital.wards["3E"]}/admissions`;
  const headers = (type = "application/json") => ({
    "content-type": type,
    "idempotency-key": "k",
    "x-demo-person": String(door.hospital.people.bedside),
  });

  it.each([
    ["nothing at all", "", "application/json", 400],
    ["no JSON", "name=x", "application/json", 400],
    ["half of it", '{"identifier":"A', "application/json", 400],
    ["a name twice", '{"identifier":"A","identifier":"B"}', "application/json", 400],
    ["a prototype", '{"__proto__":{}}', "application/json", 400],
    ["ten thousand levels", "[".repeat(10_000), "application/json", 400],
    ["five megabytes", `{"identifier":"${"x".repeat(5_000_000)}"}`, "application/json", 413],
    ["a form", "identifier=A", "application/x-www-form-urlencoded", 415],
    ["plain text", "{}", "text/plain", 415],
    ["something like JSON", "{}", "application/jsonp", 415],
    ["another character set", "{}", "application/json; charset=latin1", 415],
    ["another character set in quotes", "{}", 'application/json; x=1; Charset="UTF-16"', 415],
    ["no object", "[]", "application/json", 422],
    ["null", "null", "application/json", 422],
  ])("%s is answered with a problem, and nothing is stored", async (_, payload, type, status) => {
    const before = await count();
    const response = await door.app.inject({ method: "POST", url: url(), headers: headers(type), payload });
    expect(response.headers["content-type"]).toContain("application/problem+json");
    expect([response.statusCode, response.json().status]).toEqual([status, status]);
    expect(response.body.length).toBeLessThan(4000);
    expect(await count()).toBe(before);
  });

  // A list, a number or a text is never what an endpoint takes, and the objects of the suite have no field that is known.
  it.each<["n_" | "y_" | "i_", number[]]>([
    ["n_", [400]],
    ["y_", [422]],
    ["i_", [400, 422]],
  ])("the cases %s of the JSON parsing test suite are answered with a problem of %j", async (kind, allowed) => {
    for (const { name, input: payload } of parsingCases(kind)) {
      const response = await door.app.inject({ method: "POST", url: url(), headers: headers(), payload });
      const expected = name in refusedOnPurpose ? [400] : allowed;
      expect(expected, name).toContain(response.statusCode);
      expect(response.json().status, name).toBe(response.statusCode);
    }
  });

  it("a body may say that it is UTF-8, and is refused when it is packed", async () => {
    const send = (more: object, payload: Buffer) =>
      door.app.inject({ method: "POST", url: url(), headers: { ...headers(), ...more }, payload });
    for (const charset of ["utf-8", '"UTF-8"'])
      expect(
        (await send({ "content-type": `application/json; charset=${charset}` }, Buffer.from("[]"))).statusCode,
      ).toBe(422);
    expect((await send({ "content-encoding": "gzip" }, gzipSync("{}"))).statusCode).toBe(415);
    expect((await send({ "content-encoding": "identity" }, Buffer.from("[]"))).statusCode).toBe(422);
  });

  /** Begins a request and sends no more of it; gives what is answered all the same. */
  function answerTo(more: string, part: string): Promise<string> {
    const lines = Object.entries({ ...headers(), host: `127.0.0.1:${port}` }).map(
      ([name, value]) => `${name}: ${value}\r\n`,
    );
    return new Promise((resolve, reject) => {
      const socket = connect(port, "127.0.0.1", () => {
        socket.write(`POST ${url()} HTTP/1.1\r\n${lines.join("")}${more}\r\n\r\n${part}`);
      });
      socket.on("data", (data) => {
        resolve(String(data));
        socket.destroy();
      });
      socket.on("error", reject);
    });
  }

  it("a body that is too large is refused before it has come", async () => {
    const chunk = (size: number) => `${size.toString(16)}\r\n${" ".repeat(size)}\r\n`;
    expect(await answerTo("content-length: 5000000", "")).toMatch(/^HTTP\/1\.1 413 .*"request-too-large"/s);
    expect(await answerTo("content-length: 5000000", "{")).toMatch(/^HTTP\/1\.1 413 /);
    expect(await answerTo("transfer-encoding: chunked", chunk(200_000) + chunk(70_000))).toMatch(/^HTTP\/1\.1 413 /);
  });

  it("a body of just the limit is read", async () => {
    const send = (size: number) =>
      door.app.inject({ method: "POST", url: url(), headers: headers(), payload: `[${" ".repeat(size - 2)}]` });
    expect((await send(256 * 1024)).statusCode).toBe(422);
    expect((await send(256 * 1024 + 1)).statusCode).toBe(413);
  });

  it("a request that ends before its body does stores nothing", async () => {
    const before = await count();
    const lines = Object.entries({ ...headers(), host: `127.0.0.1:${port}`, "content-length": "400" });
    await new Promise<void>((resolve, reject) => {
      const socket = connect(port, "127.0.0.1", () => {
        const head = lines.map(([name, value]) => `${name}: ${value}\r\n`).join("");
        socket.end(`POST ${url()} HTTP/1.1\r\n${head}\r\n{"identifier":"A","number":"B"`);
      });
      socket.on("close", () => resolve());
      socket.on("error", reject);
      socket.resume();
    });
    expect(await count()).toBe(before);
  });
});
