import { afterAll, beforeAll, expect, it } from "vitest";
import { safeLogger } from "../../src/http/logger.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { type Door, openDoor } from "./door.ts";
import { naughtyStrings, sendNaughtyStrings } from "./naughty-strings.ts";

/** Words that the log itself writes; a text of such a word alone cannot be told from the log's own. */
const ofTheLog = /^[\w\s.,:"{}-]{1,12}$/;

/** The texts in a log line, however deep. */
function textsOf(line: string): string[] {
  const found: string[] = [];
  JSON.parse(line, (_name, value: unknown) => {
    if (typeof value === "string") found.push(value);
    return value;
  });
  return found;
}

/** Texts that are not empty and not too long, in characters that JSON can carry and a database keep. */
const fitting = (longest: number) =>
  naughtyStrings
    .filter((text) => !/[\0\p{Cs}]/u.test(text))
    .map((text) => text.trim())
    .filter((text) => text !== "" && [...text].length <= longest);

onEachDatabase("naughty identifiers and beds", (fresh) => {
  const lines: string[] = [];
  let door: Door;
  let sent = 0;
  beforeAll(async () => {
    const logger = safeLogger({ level: "debug", stream: { write: (line) => void lines.push(line) } });
    door = await openDoor(await fresh(), { logger });
  });
  afterAll(() => door?.close());

  async function ask(method: "GET" | "POST", path: string, payload?: object) {
    const headers = { "x-demo-person": String(door.hospital.people.prevention), "idempotency-key": `k${++sent}` };
    const asked = { method, url: `/api/v1${path}`, headers, ...(payload ? { payload } : {}) };
    const response = await door.app.inject(asked);
    return { status: response.statusCode, body: response.json() };
  }

  /** Admits a patient; the number by which their record is read back when they were taken. */
  async function admit(said: { identifier?: string; bed?: string }) {
    const fixed = { identifier: `N-${++sent}`, number: `S-${sent}`, admittedAt: "2026-11-10T09:00" };
    const { status, body } = await ask("POST", `/wards/${door.hospital.wards["3E"]}/admissions`, { ...fixed, ...said });
    return { status, stored: status === 200 ? String(body.patientId) : null };
  }

  /** Remembers who was admitted, and tells what their records say. */
  function admissions(fieldOf: (record: Record<string, unknown>) => string | null) {
    const patients: string[] = [];
    return {
      admitted: (answer: { status: number; stored: string | null }) => {
        if (answer.stored !== null) patients.push(answer.stored);
        return answer;
      },
      read: async () => {
        const kept = new Map<string, string | null>();
        for (const id of patients) kept.set(id, fieldOf((await ask("GET", `/patients/${id}`)).body));
        return kept;
      },
    };
  }

  /** Texts of which a log line holds a trace, apart from those that are words of the log itself. */
  const logged = () => {
    const log = lines.flatMap(textsOf).join("\n");
    const telling = naughtyStrings.filter((text) => text.trim() !== "" && !ofTheLog.test(text));
    expect(telling.length).toBeGreaterThan(naughtyStrings.length * 0.7);
    return telling.filter((text) => log.includes(text.trim()));
  };

  it("as a patient's number are kept as they were and find the patient again, or are refused", async () => {
    lines.length = 0;
    const { admitted, read } = admissions(({ patient }) => (patient as { identifier: string }).identifier);
    const strangers: string[] = [];
    const { troubles, taken } = await sendNaughtyStrings({
      send: async (identifier) => {
        const answer = admitted(await admit({ identifier }));
        const found = await ask("POST", "/patients/find", { identifier });
        const ids = found.status === 200 ? found.body.patients.map((one: { patientId: number }) => one.patientId) : [];
        if (answer.stored !== null && String(ids) !== answer.stored) strangers.push(JSON.stringify(identifier));
        if (found.status >= 500) strangers.push(`${found.status}`);
        return answer;
      },
      read,
    });
    expect(troubles).toEqual([]);
    expect(strangers).toEqual([]);
    expect(taken).toBe(fitting(100).filter((text) => !/\p{Cc}/u.test(text)).length);
    expect(lines.length).toBeGreaterThan(naughtyStrings.length * 2);
    expect(logged()).toEqual([]);
  }, 180_000);

  it("as the name of a bed are kept as they were, or are refused", async () => {
    lines.length = 0;
    const { admitted, read } = admissions(({ wardStays }) => (wardStays as { bed: string }[])[0]?.bed ?? null);
    const { troubles, taken } = await sendNaughtyStrings({ send: async (bed) => admitted(await admit({ bed })), read });
    expect(troubles).toEqual([]);
    expect(taken).toBe(fitting(40).filter((text) => !/\p{Cc}/u.test(text)).length);
    expect(logged()).toEqual([]);
  }, 180_000);
});
