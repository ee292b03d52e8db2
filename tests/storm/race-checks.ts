import { expect } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import type { OutputOf } from "../../shared/endpoint.ts";
import type { Answer, Doors } from "./doors.ts";
import type { Move, Racers } from "./race-moves.ts";

type PatientRecord = OutputOf<typeof endpoints.readPatient>;

interface Result {
  readonly move: Move;
  readonly answer: Answer<typeof endpoints.readPatient>;
}

/** Holds what every race must leave, whoever came first. */
export async function checkRace(
  doors: Doors,
  racers: Racers,
  results: readonly { move: Move; answer: { done: unknown; refused: string | null } }[],
  story: string,
): Promise<void> {
  const read = await doors.ask(endpoints.readPatient, { patientId: racers.patientId }, { client: 1 });
  if (read.done === null) throw new Error(`${story}: the record cannot be read: ${read.refused}`);
  const done = results.filter(({ answer }) => answer.refused === null).map(({ move, answer }) => ({ move, answer }));
  checkPlaces(read.done, story);
  checkCatheter(read.done, racers, done as readonly Result[], story);
  await checkAudit(doors, racers, done as readonly Result[], story);
}

/** One place at a time, inside the stay. */
function checkPlaces({ stays, wardStays }: PatientRecord, story: string): void {
  for (const stay of stays) {
    const own = wardStays.filter(({ stayId, voidReason }) => stayId === stay.stayId && voidReason === null);
    const inOrder = own.toSorted((a, b) => a.startAt - b.startAt || (a.endAt ?? Infinity) - (b.endAt ?? Infinity));
    for (const [i, wardStay] of inOrder.entries()) {
      const end = wardStay.endAt ?? Number.POSITIVE_INFINITY;
      expect(end, `${story}: overlap`).toBeLessThanOrEqual(inOrder[i + 1]?.startAt ?? Number.POSITIVE_INFINITY);
      expect(wardStay.startAt, story).toBeGreaterThanOrEqual(stay.admittedAt);
      expect(end, story).toBeLessThanOrEqual(stay.dischargedAt ?? Number.POSITIVE_INFINITY);
    }
  }
}

/** Of those who saw version 1 of the catheter, one changed it; nothing of it is lost, and no note contradicts it. */
function checkCatheter(
  { catheters, notes }: PatientRecord,
  racers: Racers,
  done: readonly Result[],
  story: string,
): void {
  const catheter = catheters.find(({ catheterId }) => catheterId === racers.catheterId);
  const changes = done.filter(({ move }) => ["remove-catheter", "correct-catheter"].includes(move.action));
  expect(changes.length, `${story}: two changes of one version`).toBeLessThanOrEqual(1);
  expect(catheter?.version, story).toBe(1 + changes.length);
  const [change] = changes;
  if (change?.move.sizeFr !== undefined) expect(catheter?.sizeFr, `${story}: lost`).toBe(change.move.sizeFr);
  if (change?.move.action === "remove-catheter") expect(catheter?.removedAt, `${story}: lost`).not.toBeNull();
  for (const { at, catheterId } of notes)
    if (catheterId === racers.catheterId)
      expect(at, `${story}: noted after the removal`).toBeLessThanOrEqual(
        catheter?.removedAt ?? Number.POSITIVE_INFINITY,
      );
  const kept = [...catheters.map(({ catheterId }) => catheterId), ...notes.map(({ noteId }) => noteId)];
  const made = done.filter(({ move }) => ["record-insertion", "write-note"].includes(move.action)).length;
  expect(kept, `${story}: what was acknowledged is there`).toHaveLength(1 + made);
}

/** Every change that was acknowledged has one audit entry, and nothing else has one. */
async function checkAudit(doors: Doors, racers: Racers, done: readonly Result[], story: string): Promise<void> {
  const query = { patientId: racers.patientId, limit: 200 };
  const found = await doors.ask(endpoints.searchAudit, query, { client: 0 });
  if (found.done === null) throw new Error(`${story}: the audit trail cannot be read: ${found.refused}`);
  const setUp = ["admit-patient", "record-catheter-on-arrival", "discharge-patient"];
  const merged = done.some(({ move }) => move.action === "merge-patients");
  const before = merged ? ["admit-patient", ...setUp] : setUp.slice(0, 2);
  const changes = found.done.entries.map(({ action }) => action).filter((action) => !action.startsWith("view-"));
  const expected = [...before, ...done.map(({ move }) => move.action)];
  expect(changes.toSorted(), `${story}: audit`).toEqual(expected.toSorted());
}
