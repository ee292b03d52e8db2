import type { InsertionRecord, RemovalRecord } from "../../shared/records.ts";
import type { Catheter, Mark, Stay, WardStay } from "../domain/timeline/timeline.ts";
import { type CellValue, columnCells, type Rows, readRows } from "./read-rows.ts";
import type { Read } from "./store.ts";

/** A stay with the surviving patient whose days it makes. */
export interface OwnedStay {
  readonly survivorId: number;
  readonly identifier: string;
  readonly facilityId: number;
  readonly stay: Stay;
}

/** What the ids of a question are. */
export type StayKey = "survivor" | "stay" | "catheter";

/** The stays to which these ids lead, with their entries, voided ones too, in the order of stays. */
export async function ownedStays(read: Read, key: StayKey, ids: readonly number[]): Promise<OwnedStay[]> {
  const stays = (await readRows(read, stayRows[key], ids)).sort(byFirst);
  const stayIds = stays.map(([id]) => Number(id));
  const wardStays = grouped((await readRows(read, wardStayRows, stayIds)).sort(byFirst), wardStayFrom);
  const catheters = grouped((await readRows(read, catheterRows, stayIds)).sort(byFirst), catheterFrom);
  return stays.map((cells) => {
    const stay = stayFrom(cells);
    return {
      survivorId: Number(cells[4]),
      identifier: String(cells[5]),
      facilityId: Number(cells[6]),
      stay: { ...stay, wardStays: wardStays.get(stay.id) ?? [], catheters: catheters.get(stay.id) ?? [] },
    };
  });
}

type Cells = readonly CellValue[];

const entry = ["id", "version", "void_reason", "marks"];

const stayColumns = ["patient_id", "number", "admitted_at", "discharged_at", "disposition", "span_from_moves"];
const stayCells = [
  ...columnCells("s", entry),
  { plain: "p.survivor_id" },
  { plain: "q.identifier" },
  { plain: "s.facility_id" },
  ...columnCells("s", stayColumns),
];
const patientOfStay = { table: "patient p", on: "p.id = s.patient_id" };
const survivor = { table: "patient q", on: "q.id = p.survivor_id" };

const stayRows: Readonly<Record<StayKey, Rows>> = {
  survivor: {
    cells: stayCells,
    joins: [
      { table: "patient p", on: "p.survivor_id = given.value" },
      { table: "stay s", on: "s.patient_id = p.id" },
      survivor,
    ],
  },
  stay: { cells: stayCells, joins: [{ table: "stay s", on: "s.id = given.value" }, patientOfStay, survivor] },
  catheter: {
    cells: stayCells,
    joins: [
      { table: "catheter c", on: "c.id = given.value" },
      { table: "stay s", on: "s.id = c.stay_id" },
      patientOfStay,
      survivor,
    ],
  },
};

const wardStayRows: Rows = {
  cells: [
    ...columnCells("w", [...entry, "stay_id"]),
    ...columnCells("w", ["ward_id", "bed", "start_at", "end_at", "absence_after"]),
  ],
  joins: [{ table: "ward_stay w", on: "w.stay_id = given.value" }],
};

function stayFrom([id, version, voidReason, marks, , , , patientId, number, admittedAt, ...rest]: Cells) {
  const [dischargedAt, disposition, spanFromMoves] = rest;
  return {
    ...{ id, version, voidReason, marks: marksFrom(marks) },
    ...{ patientId, number, admittedAt, dischargedAt, disposition, spanFromMoves: Boolean(spanFromMoves) },
  } as Omit<Stay, "wardStays" | "catheters">;
}

function wardStayFrom([id, version, voidReason, marks, , wardId, bed, startAt, endAt, absenceAfter]: Cells) {
  return { id, version, voidReason, marks: marksFrom(marks), wardId, bed, startAt, endAt, absenceAfter } as WardStay;
}

/** When the first or the last standing note about a catheter happened. */
const noted = (which: "min" | "max") => ({
  instant: `(SELECT ${which}(n.at) FROM catheter_note n WHERE n.catheter_id = c.id AND n.void_key = 0)`,
});

const instants = ["inserted_at", "removed_at", "removed_after_at", "removed_before_at", "last_seen_at"];
const catheterRows: Rows = {
  cells: [
    ...columnCells("c", [...entry, "stay_id", ...instants]),
    noted("min"),
    noted("max"),
    ...columnCells("c", ["number", "kind", "in_place_on_arrival", "indication", "size_fr", "balloon_ml"]),
    ...columnCells("c", ["insertion_record", "removal_record"]),
  ],
  joins: [{ table: "catheter c", on: "c.stay_id = given.value" }],
};

function catheterFrom(cells: Cells) {
  const [id, version, voidReason, marks, , insertedAt, removedAt, removedAfterAt, removedBeforeAt, lastSeenAt] = cells;
  const [first, last, number, kind, inPlaceOnArrival, indication, sizeFr, balloonMl, insertion, removal] =
    cells.slice(10);
  return {
    ...{ id, version, voidReason, marks: marksFrom(marks) },
    ...{ number, kind, insertedAt, inPlaceOnArrival: Boolean(inPlaceOnArrival), removedAt, removedAfterAt },
    ...{ removedBeforeAt, lastSeenAt, indication, sizeFr, balloonMl },
    insertionRecord: recordFrom<InsertionRecord>(insertion),
    removalRecord: recordFrom<RemovalRecord>(removal),
    noted: first === null ? null : { first, last },
  } as Catheter;
}

function recordFrom<T>(text: CellValue | undefined): T | null {
  return typeof text === "string" ? (JSON.parse(text) as T) : null;
}

const noMarks: readonly Mark[] = [];

function marksFrom(marks: CellValue | undefined): readonly Mark[] {
  return marks === "" ? noMarks : (String(marks).split(" ") as Mark[]);
}

/** Entries by their stay, which follows what every entry has. */
function grouped<T>(rows: readonly CellValue[][], entryFrom: (cells: Cells) => T): Map<number, T[]> {
  const lists = new Map<number, T[]>();
  for (const row of rows) {
    const stayId = Number(row[entry.length]);
    const list = lists.get(stayId);
    if (list) list.push(entryFrom(row));
    else lists.set(stayId, [entryFrom(row)]);
  }
  return lists;
}

/** In the order of ids, which come first. */
function byFirst(a: readonly CellValue[], b: readonly CellValue[]): number {
  return Number(a[0]) - Number(b[0]);
}
