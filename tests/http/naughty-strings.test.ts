import { afterAll, beforeAll, expect, it } from "vitest";
import { onEachDatabase } from "../databases/databases.ts";
import { type Door, openDoor } from "./door.ts";
import { naughtyStrings, sendNaughtyStrings } from "./naughty-strings.ts";

onEachDatabase("naughty texts", (fresh) => {
  let door: Door;
  let keys = 0;
  beforeAll(async () => {
    door = await openDoor(await fresh());
  });
  afterAll(() => door?.close());

  async function ask(method: "GET" | "POST", path: string, payload?: object) {
    const person = { "x-demo-person": String(door.hospital.people.bedside), "idempotency-key": `k${++keys}` };
    const sent = { method, url: `/api/v1${path}`, headers: person, ...(payload ? { payload } : {}) };
    const response = await door.app.inject(sent);
    return { status: response.statusCode, body: response.json() };
  }

  async function patientWithCatheter(name: string) {
    const stay = { identifier: name, number: `S-${name}`, admittedAt: "2026-11-10T09:00" };
    const { stayId, patientId } = (await ask("POST", `/wards/${door.hospital.wards["3E"]}/admissions`, stay)).body;
    const arrival = { foundAt: "2026-11-10T10:00" };
    const { catheterId } = (await ask("POST", `/stays/${stayId}/catheters/on-arrival`, arrival)).body;
    return { patientId, catheterId };
  }

  it("in a remark come back as they were, or are refused", async () => {
    // Every write reads the patient's record, so one patient with all the notes would take long.
    const patients = await Promise.all(Array.from({ length: 20 }, (_, at) => patientWithCatheter(`REMARKS-${at}`)));
    let next = 0;
    const { troubles, taken } = await sendNaughtyStrings({
      send: async (remark) => {
        const review = { at: "2026-11-11T09:00", outcome: "remove", remark };
        const { catheterId } = patients[next++ % patients.length] ?? {};
        const { status, body } = await ask("POST", `/catheters/${catheterId}/reviews`, review);
        return { status, stored: status === 200 ? String(body.noteId) : null };
      },
      read: async () => {
        const records = await Promise.all(patients.map(({ patientId }) => ask("GET", `/patients/${patientId}`)));
        const notes: { noteId: number; remark: string }[] = records.flatMap(({ body }) => body.notes);
        return new Map(notes.map(({ noteId, remark }) => [String(noteId), remark]));
      },
    });
    expect(troubles).toEqual([]);
    expect(taken).toBeGreaterThan(naughtyStrings.length * 0.9);
  }, 120_000);
});
