import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { call } from "../../shared/call.ts";
import type { Endpoint } from "../../shared/endpoint.ts";
import { AnsweredProblem } from "../../shared/problem-document.ts";
import { safeLogger } from "../../src/http/logger.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { type Door, openDoor } from "./door.ts";
import { workOn } from "./import-work.ts";
import { inputs } from "./inputs.ts";
import { prepared } from "./prepared.ts";
import { situationsIn } from "./situations.ts";
import type { Subjects } from "./subjects.ts";

type Name = keyof typeof endpoints;
const names = Object.keys(endpoints) as Name[];

/** What marks a text as one that must not be seen: those typed here, and the hospital's numbers of its patients. */
const secret = /CANARY|NEW-\d|ALDER-\d/;

let made = 0;
const canary = () => `CANARY-${++made}`;

/**
 * What a person types about a patient and what the hospital calls one, by the names of fields. Reasons of corrections are
 * not among them: the audit trail keeps them, for those who may see it.
 */
const typed = ["identifier", "number", "bed", "disposition", "remark", "patientResponse"];

/** An input with a canary in every field that holds such a text, also where the usual input leaves it out. */
function withCanaries(name: Name, input: object): object {
  const { shape } = endpoints[name].body as Endpoint["body"];
  const own = typed.filter((field) => field in shape).map((field) => [field, canary()]);
  const record = (input as { record?: object }).record;
  const filled = Object.assign({}, input, Object.fromEntries(own));
  return record ? { ...filled, record: { ...record, patientResponse: canary() } } : filled;
}

/** The same with a canary that is too long in the place of every value of the body, so that nothing of it can be read. */
function unreadable(name: Name, input: object): object {
  const fields = Object.keys((endpoints[name].body as Endpoint["body"]).shape).map((field) => [
    field,
    canary().repeat(200),
  ]);
  return Object.assign({}, input, Object.fromEntries(fields));
}

onEachDatabase("who a patient is, and what somebody wrote about them", (fresh) => {
  const lines: string[] = [];
  const urls: string[] = [];
  const refusals: { name: Name; code: string; text: string }[] = [];
  const answered = new Set<Name>();
  let door: Door;

  beforeAll(async () => {
    const logger = safeLogger({ level: "debug", stream: { write: (line) => void lines.push(line) } });
    door = await openDoor(await fresh(), { logger });
    const base = await door.app.listen({ host: "127.0.0.1", port: 0 });
    const { "other ward": hidden } = await situationsIn(door.hospital);
    for (const name of names) await tryOut(base, name, { ...hidden, fresh: canary });
  }, 120_000);
  afterAll(() => door?.close());

  /** Asks as it should be, then again, then too early, too late, about a record out of reach, and unreadably. */
  async function tryOut(base: string, name: Name, hidden: Subjects): Promise<void> {
    const { wards, people } = door.hospital;
    const headers = { "x-demo-person": String(people.prevention) };
    const work = () => workOn(door.hospital.store);
    const where = { fresh: canary, wardId: wards["3E"], toWardId: wards["4N"], work };
    const prepare: Parameters<typeof prepared>[0] = (...asked) => call(...asked, { base, headers, key: canary() });
    const { about, input } = await prepared(prepare, name, where);
    const good = withCanaries(name, input);
    await ask(base, name, good);
    await ask(base, name, good);
    for (const at of ["2020-01-01T00:00:00Z", "2026-11-30T00:00:00Z", "CANARY-TIME"])
      await ask(base, name, withCanaries(name, inputs[name]({ ...about, at }) as object));
    await ask(base, name, { ...good, seenVersion: 999 });
    await ask(base, name, withCanaries(name, inputs[name](hidden) as object), "bedside");
    await askRaw(base, name, unreadable(name, good));
  }

  async function ask(base: string, name: Name, input: object, person: "prevention" | "bedside" = "prevention") {
    const headers = { "x-demo-person": String(door.hospital.people[person]) };
    const send: typeof fetch = (url, ...rest) => {
      urls.push(String(url));
      return fetch(url, ...rest);
    };
    try {
      await call(endpoints[name] as Endpoint, input as never, { base, headers, key: `k${++made}`, fetch: send });
      answered.add(name);
    } catch (error) {
      if (!(error instanceof AnsweredProblem)) throw error;
      // The current state of what was changed is shown to those who may see it; the refusal itself tells nothing of it.
      const { current: _, ...document } = error.document;
      refusals.push({ name, code: document.code, text: JSON.stringify(document) });
    }
  }

  /** Sends a body as it is, past the typed client. */
  async function askRaw(base: string, name: Name, input: object): Promise<void> {
    const endpoint: Endpoint = endpoints[name];
    if (endpoint.method === "GET") return;
    const values = input as Record<string, unknown>;
    const path = endpoint.path.replaceAll(/\{(\w+)\}/g, (_, part: string) => String(values[part]));
    const body = Object.fromEntries(Object.entries(values).filter(([field]) => field in endpoint.body.shape));
    const person = { "x-demo-person": String(door.hospital.people.prevention) };
    const headers = {
      ...person,
      "content-type": "application/json",
      "idempotency-key": `k${++made}`,
      "if-match": '"1"',
    };
    const response = await fetch(`${base}/api/v1${path}`, { method: "POST", headers, body: JSON.stringify(body) });
    expect([name, response.status]).toEqual([name, 422]);
    refusals.push({ name, code: "unreadable", text: await response.text() });
  }

  it("was asked about in earnest: every endpoint answered, and every one that takes a body refused", () => {
    expect(names.filter((name) => !answered.has(name))).toEqual([]);
    const takers = names.filter((name) => endpoints[name].method === "POST");
    expect(takers.filter((name) => !refusals.some((one) => one.name === name))).toEqual([]);
    const codes = new Set(refusals.map(({ code }) => code));
    const usual = ["not-found", "stale-version", "in-the-future", "outside-stay", "time-unreadable", "unreadable"];
    expect([...codes]).toEqual(expect.arrayContaining(usual));
    expect(made).toBeGreaterThan(names.length * 10);
    expect(lines.length).toBeGreaterThan(names.length * 5);
  });

  it("is in no log line and no address", () => {
    expect(lines.filter((line) => secret.test(line))).toEqual([]);
    expect(urls.filter((url) => secret.test(url))).toEqual([]);
  });

  it("is in no refusal", () => {
    expect(refusals.filter(({ text }) => secret.test(text))).toEqual([]);
  });

  it("is in no detail of the audit trail, and of no change that is listed", async () => {
    const rows = await door.hospital.store.read((read) => read.db.auditEntry.findMany());
    expect(rows.length).toBeGreaterThan(names.length * 2);
    expect(rows.filter(({ details }) => secret.test(details))).toEqual([]);
  });

  it("is kept where it belongs", async () => {
    const { patients, notes } = await door.hospital.store.read(async ({ db }) => ({
      patients: await db.patient.count({ where: { identifier: { startsWith: "CANARY" } } }),
      notes: await db.catheterNote.count({ where: { remark: { startsWith: "CANARY" } } }),
    }));
    expect(patients).toBeGreaterThan(names.length);
    expect(notes).toBeGreaterThan(0);
  });
});

describe("the fields that hold such a text", () => {
  it("are all known here", () => {
    // What describes a ward is of no patient, and neither is the name of a file of the layout.
    const ofWards = ["code", "name", "type", "file"];
    // Neither is what a baseline is and where it is from.
    const ofBaselines = ["source", "year", "definition", "population", "edition", "csv"];
    // Neither is a laboratory's wording, nor an open point and its reading.
    const ofRules = ["wording", "option", "value"];
    const known = [
      ...typed,
      ...ofRules,
      ...ofWards,
      ...ofBaselines,
      "reason",
      "indication",
      "identifier",
      "sex",
      "confirm",
      "items",
    ];
    const texts = Object.values(endpoints).flatMap(({ body }) =>
      Object.entries(body.shape).flatMap(([field, schema]) => (isText(schema) ? [field] : [])),
    );
    expect([...new Set(texts)].filter((field) => !known.includes(field) && !/^at$|At$/.test(field))).toEqual([]);
  });
});

/** Whether any text can stand there. */
function isText(schema: { safeParse(value: unknown): { success: boolean } }): boolean {
  return schema.safeParse("any text that somebody may type").success;
}
