import type { FastifyInstance } from "fastify";
import supertest from "supertest";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { z } from "zod";
import { endpoint } from "../../shared/endpoint.ts";
import { documentMaker } from "../../src/documents/document-maker.ts";
import { emptyApp } from "../../src/http/app.ts";
import { heavyWorkHere } from "../../src/http/heavy/heavy-work.ts";
import { mount } from "../../src/http/mount.ts";
import { localPrincipal } from "../../src/http/principal.ts";
import { freshSqlite, type TestDatabase } from "../databases/databases.ts";
import { type AlderBay, fillAlderBay, lookedAt } from "./alder-bay.ts";

const weigh = endpoint({
  method: "POST",
  path: "/weights/{place}",
  summary: "Weigh",
  permission: "see-wards",
  wards: "facility",
  reply: "json",
  params: { place: z.string().min(2) },
  query: { unit: z.enum(["kg", "lb"]).optional() },
  body: {
    grams: z.int().min(0),
    parts: z.array(z.strictObject({ "a/b": z.string() })).optional(),
  },
  output: z.strictObject({ sum: z.int(), wards: z.int().nullable() }),
  errors: [],
});

let app: FastifyInstance;
let database: TestDatabase;
let hospital: AlderBay;
let answer: unknown;

beforeAll(async () => {
  database = await freshSqlite();
  hospital = await fillAlderBay(database.url);
  const options = {
    store: hospital.store,
    clock: () => lookedAt,
    principalOf: localPrincipal({ store: hospital.store, demo: true }),
    heavy: heavyWorkHere({ store: hospital.store, documents: documentMaker({ version: "0", browserPath: null }) }),
  };
  app = emptyApp(options);
  const route = async (act: { now: number }, input: { grams: number }, reach: { wardIds?: readonly number[] }) =>
    (answer ?? { sum: input.grams + act.now, wards: reach.wardIds?.length ?? null }) as { sum: number; wards: null };
  mount(app, { name: "weigh", endpoint: weigh, route }, options);
  await app.ready();
});

afterAll(async () => {
  await app?.close();
  await hospital?.store.close();
  await database?.drop();
});

const post = (path: string) => supertest(app.server).post(`/api/v1/weights/${path}`);

describe("a mounted endpoint", () => {
  it("hands parameters, query and body as one input, the time and the reach to its route", async () => {
    const { body } = await post("ward?unit=kg").send({ grams: 5 }).expect(200);
    expect(body).toEqual({ sum: lookedAt + 5, wards: null });
    const own = await post("ward").set("x-demo-person", String(hospital.people.bedside)).send({ grams: 0 }).expect(200);
    // The unit of another facility to which the person belongs too is none of this one.
    expect(own.body).toEqual({ sum: lookedAt, wards: 1 });
  });

  it("names every fault of all three parts at once, by JSON pointer, and repeats nothing that was sent", async () => {
    const sent = { grams: "ALDER-1001", name: "ALDER-1001", parts: [{ "a/b": 1, "~c": 2 }] };
    const { body, text } = await post("x?unit=stone&q=1").send(sent).expect(422);
    const faults = body.errors.map((error: { pointer: string; code: string }) => [error.pointer, error.code]);
    // "/" and "~" of names are written ~1 and ~0: RFC 6901, section 3.
    expect(faults).toEqual([
      ["/place", "field-unreadable"],
      ["/unit", "field-unreadable"],
      ["/q", "field-unknown"],
      ["/grams", "field-unreadable"],
      ["/parts/0/a~1b", "field-unreadable"],
      ["/parts/0/~0c", "field-unknown"],
      ["/name", "field-unknown"],
    ]);
    expect(text).not.toContain("ALDER-1001");
    expect(text).not.toContain("stone");
  });

  it("tells a field that is missing from one that cannot be used", async () => {
    for (const sent of [undefined, {}, { parts: [] }]) {
      const { body } = await post("ward").send(sent).expect(422);
      expect(body.errors).toEqual([expect.objectContaining({ pointer: "/grams", code: "field-missing" })]);
    }
    const { body } = await post("ward").send({ grams: null }).expect(422);
    expect(body.code).toBe("field-unreadable");
  });

  it.each([
    ["broken JSON", "application/json", '{"grams":', 400, "request-unreadable"],
    [
      "a body that would reach into prototypes",
      "application/json",
      '{"__proto__":{"a":1}}',
      400,
      "json-value-unusable",
    ],
    ["a list", "application/json", "[1]", 422, "field-unreadable"],
    ["plain text, as a form of another site can send it", "text/plain", '{"grams":5}', 415, "media-type-unknown"],
    ["a form", "application/x-www-form-urlencoded", "grams=5", 415, "media-type-unknown"],
    ["too much", "application/json", `{"name":"${"a".repeat(300_000)}"}`, 413, "request-too-large"],
  ])("refuses %s", async (_what, type, body, status, code) => {
    const response = await post("ward").set("content-type", type).send(body).expect(status);
    expect([response.type, response.body.code]).toEqual(["application/problem+json", code]);
  });

  it("does not let out what its contract does not know", async () => {
    for (const wrong of [{ sum: 1, wards: 1, name: "ALDER-1001" }, { sum: 1 }, { sum: Number.NaN, wards: null }]) {
      answer = wrong;
      const { body, text } = await post("ward").send({ grams: 5 }).expect(500);
      expect(body.code).toBe("internal-error");
      expect(text).not.toContain("ALDER-1001");
    }
    answer = undefined;
  });
});

describe("a description of an endpoint", () => {
  const text = { method: "GET", summary: "", permission: "see-wards", reply: "json", errors: [] } as const;
  const b = { b: z.string() };
  it("is refused as a bug when a name stands in two parts", () => {
    const wrong = { ...text, wards: "none", path: "/a/{b}", params: b, query: b, output: z.null() } as const;
    expect(() => endpoint(wrong)).toThrow("/a/{b} has a name in two parts");
  });

  it("is refused as a bug when its path differs from its parameters", () => {
    const wrong = { ...text, wards: "none", path: "/a/{c}", params: b, output: z.null() } as const;
    expect(() => endpoint(wrong)).toThrow("/a/{c} differs from its parameters");
  });

  it("is refused as a bug when it is of one ward and names none", () => {
    const wrong = { ...text, wards: "ward", path: "/a/{b}", params: b, output: z.null() } as const;
    expect(() => endpoint(wrong)).toThrow("/a/{b} does not name its ward");
  });
});
