import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { apiBase } from "../../shared/api-base.ts";
import { problems } from "../../shared/problems.ts";
import { freshSqlite } from "../databases/databases.ts";
import { type Door, openDoor } from "./door.ts";

interface Operation {
  operationId: string;
  summary: string;
  parameters?: { in: string; name: string; required: boolean; schema: object }[];
  responses: Record<string, { description: string; content: Record<string, { schema: object }> }>;
}
interface Document {
  openapi: string;
  info: { title: string; version: string };
  paths: Record<string, Record<string, Operation>>;
  components: { schemas: Record<string, object> };
}

let door: Door;
let document: Document;

beforeAll(async () => {
  door = await openDoor(await freshSqlite());
  document = (await door.get(`${apiBase}/openapi.json`).expect(200)).body;
});

afterAll(() => door?.close());

const operations = () =>
  Object.entries(document.paths).flatMap(([path, methods]) =>
    Object.entries(methods).map(([method, operation]) => ({ path, method: method.toUpperCase(), operation })),
  );

/** All values of `$ref` in a document. */
function references(part: unknown): string[] {
  if (typeof part !== "object" || part === null) return [];
  return Object.entries(part).flatMap(([key, value]) => (key === "$ref" ? [String(value)] : references(value)));
}

describe("the published description", () => {
  // What makes a document valid: OpenAPI Specification 3.1.0, sections 4.8.1, 4.8.10, 4.8.12 and 4.8.16.
  it("is OpenAPI 3.1 with what the specification requires", () => {
    expect(document.openapi).toMatch(/^3\.1\.\d+$/);
    expect(document.info).toMatchObject({ title: "Dwell Ledger", version: "1.2.3" });
    const ids = operations().map(({ operation }) => operation.operationId);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { path, operation } of operations()) {
      const inPath = [...path.matchAll(/\{(\w+)\}/g)].map(([, name]) => name);
      const declared = (operation.parameters ?? []).filter((one) => one.in === "path");
      expect(declared.map(({ name }) => name).sort()).toEqual(inPath.sort());
      expect(declared.every(({ required }) => required)).toBe(true);
      expect(Object.keys(operation.responses)).toContain("200");
      for (const response of Object.values(operation.responses)) expect(response.description).not.toBe("");
    }
  });

  it("names every endpoint as the contract does, and nothing else", () => {
    const published = operations().map(({ path, method, operation }) => [operation.operationId, method, path]);
    const meant = Object.entries(endpoints).map(([name, { method, path }]) => [name, method, apiBase + path]);
    expect(published.sort()).toEqual(meant.sort());
  });

  it("refers only to shapes that it has, and has none that nothing refers to", () => {
    const used = new Set(references(document).map((reference) => reference.replace("#/components/schemas/", "")));
    expect(used).toEqual(new Set(Object.keys(document.components.schemas)));
    expect(used.size).toBeGreaterThan(5);
  });

  it("lists the refusals of each endpoint under their status, as problem documents", () => {
    for (const { operation } of operations()) {
      const endpoint = endpoints[operation.operationId as keyof typeof endpoints];
      for (const code of ["not-permitted", "field-unknown", ...endpoint.errors] as const) {
        const response = operation.responses[String(problems[code].status)];
        expect(response?.description).toContain(`${code}: ${problems[code].title}`);
        expect(response?.content["application/problem+json"]?.schema).toEqual({ $ref: "#/components/schemas/Problem" });
      }
    }
  });

  it("shows people the same document", async () => {
    expect((await door.get("/docs/json").expect(200)).body).toEqual(document);
    expect((await door.get("/docs").expect(200)).text).toContain("Dwell Ledger API");
  });
});

/** Addresses that are no endpoints. */
const others = [/^\/health$/, /^\/docs(\/|$)/, /^\/api\/v1\/openapi\.json$/, /^\/\*$/];

describe("the routes that Fastify really has", () => {
  it("are the endpoints and the few that are named here", async () => {
    const printed = door.app.printRoutes({ commonPrefix: false, includeHooks: false });
    const routes = routesIn(printed).filter(({ path }) => !others.some((other) => other.test(path)));
    const meant = Object.values(endpoints).map(({ method, path }) => ({
      path: apiBase + path.replaceAll(/\{(\w+)\}/g, ":$1"),
      methods: method === "GET" ? ["GET", "HEAD"] : [method],
    }));
    // One method a line: the printed tree puts several of one address together or apart as it likes.
    const lines = (list: { path: string; methods: readonly string[] }[]) =>
      list.flatMap(({ path, methods }) => methods.map((method) => `${path} ${method}`)).sort();
    expect(lines(routes)).toEqual(lines(meant));
  });
});

/** Reads the tree that Fastify prints: each line is a piece of a path, with its methods in brackets where there is a route. */
function routesIn(printed: string): { path: string; methods: string[] }[] {
  const pieces: string[] = [];
  return printed.split("\n").flatMap((line) => {
    const found = /^((?:│ {3}| {4})*)(?:├|└)── (.*?)(?: \(([A-Z, ]+)\))?$/.exec(line);
    if (!found) return [];
    const [, indent = "", piece = "", methods] = found;
    pieces.splice(indent.length / 4);
    pieces.push(piece);
    return methods === undefined ? [] : [{ path: pieces.join(""), methods: methods.split(", ") }];
  });
}
