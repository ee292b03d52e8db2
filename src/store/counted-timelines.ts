import { type AbsenceKind, absenceKinds, type CatheterKind, catheterKinds } from "../../shared/vocabulary.ts";
import type {
  CountedCatheter,
  CountedStay,
  CountedTimeline,
  CountedWardStay,
} from "../domain/timeline/counted-timeline.ts";
import { type NumberRows, noNumber, readNumbers } from "./read-numbers.ts";
import type { Read } from "./store.ts";

/**
 * What counting asks of these surviving patients, in the order given, their stays in the order of ids. Voided entries
 * are left out; a patient without stays has an empty timeline.
 */
export async function countedTimelines(read: Read, survivorIds: readonly number[]): Promise<CountedTimeline[]> {
  const timelines = new Map(survivorIds.map((patientId) => [patientId, { patientId, stays: [] as StayInMaking[] }]));
  const stays = new Map<number, StayInMaking>();
  const cells = await readNumbers(read, stayRows, survivorIds);
  for (let i = 0; i < cells.length; i += stayRows.cells.length) {
    const stay = {
      id: cells[i + 1] as number,
      voidReason: null,
      admittedAt: cells[i + 2] as number,
      dischargedAt: numberOrNull(cells[i + 3]),
      wardStays: [],
      catheters: [],
    };
    stays.set(stay.id, stay);
    timelines.get(cells[i] as number)?.stays.push(stay);
  }
  await addWardStays(read, stays);
  await addCatheters(read, stays);
  for (const timeline of timelines.values()) if (timeline.stays.length > 1) timeline.stays.sort((a, b) => a.id - b.id);
  return [...timelines.values()];
}

interface StayInMaking extends CountedStay {
  readonly wardStays: CountedWardStay[];
  readonly catheters: CountedCatheter[];
}

async function addWardStays(read: Read, stays: ReadonlyMap<number, StayInMaking>): Promise<void> {
  const cells = await readNumbers(read, wardStayRows, [...stays.keys()]);
  for (let i = 0; i < cells.length; i += wardStayRows.cells.length) {
    stays.get(cells[i] as number)?.wardStays.push({
      id: cells[i + 1] as number,
      voidReason: null,
      wardId: cells[i + 2] as number,
      startAt: cells[i + 3] as number,
      endAt: numberOrNull(cells[i + 4]),
      absenceAfter: absences[cells[i + 5] as number] ?? null,
    });
  }
}

async function addCatheters(read: Read, stays: ReadonlyMap<number, StayInMaking>): Promise<void> {
  const cells = await readNumbers(read, catheterRows, [...stays.keys()]);
  for (let i = 0; i < cells.length; i += catheterRows.cells.length) {
    stays.get(cells[i] as number)?.catheters.push({
      voidReason: null,
      kind: kinds[cells[i + 1] as number] as CatheterKind,
      insertedAt: numberOrNull(cells[i + 2]),
      removedAt: numberOrNull(cells[i + 3]),
      removedAfterAt: numberOrNull(cells[i + 4]),
    });
  }
}

function numberOrNull(cell: number | undefined): number | null {
  return cell === undefined || cell === noNumber ? null : cell;
}

const absences = Object.keys(absenceKinds) as AbsenceKind[];
const kinds = Object.keys(catheterKinds) as CatheterKind[];

const stayRows: NumberRows = {
  cells: [{ int: "p.survivor_id" }, { int: "s.id" }, { instant: "s.admitted_at" }, { instant: "s.discharged_at" }],
  joins: [
    { table: "patient p", on: "p.survivor_id = given.value" },
    { table: "stay s", on: "s.patient_id = p.id AND s.void_key = 0" },
  ],
};

const wardStayRows: NumberRows = {
  cells: [
    { int: "w.stay_id" },
    { int: "w.id" },
    { int: "w.ward_id" },
    { instant: "w.start_at" },
    { instant: "w.end_at" },
    { int: placeIn(absences, "w.absence_after") },
  ],
  joins: [{ table: "ward_stay w", on: "w.stay_id = given.value AND w.void_key = 0" }],
};

const catheterRows: NumberRows = {
  cells: [
    { int: "c.stay_id" },
    { int: placeIn(kinds, "c.kind") },
    { instant: "c.inserted_at" },
    { instant: "c.removed_at" },
    { instant: "c.removed_after_at" },
  ],
  joins: [{ table: "catheter c", on: "c.stay_id = given.value AND c.void_key = 0" }],
};

/** SQL for the place of a column's word in a list; null when the column has none. */
function placeIn(list: readonly string[], column: string): string {
  return `CASE ${column} ${list.map((word, i) => `WHEN '${word}' THEN ${i}`).join(" ")} END`;
}
