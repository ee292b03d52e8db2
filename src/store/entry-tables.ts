import type { Catheter, Entry, Stay, WardStay } from "../domain/timeline/timeline.ts";
import type { BulkTable } from "./bulk.ts";
import type { Recording } from "./patients.ts";

type Cell = number | string | boolean | null;

/** How the entries of a timeline lie in their tables. */
export interface EntryTable<T extends Entry> extends BulkTable {
  readonly kind: string;
  /** The cells of an entry in the order of the columns; `parentId` is its stay, or the stay's patient. */
  cells(entry: T, parentId: number, by: Recording): Cell[];
}

const common = {
  marks: "text",
  version: "int",
  void_key: "int",
  void_reason: "text",
  recorded_at: "instant",
  recorded_by: "int",
} as const;

function commonCells(entry: Entry, by: Recording): Cell[] {
  const voidKey = entry.voidReason === null ? 0 : entry.id;
  return [entry.marks.join(" "), entry.version, voidKey, entry.voidReason, by.now, by.personId];
}

export const stayTable: EntryTable<Stay> = {
  kind: "stay",
  table: "stay",
  columns: {
    id: "int",
    facility_id: "int",
    patient_id: "int",
    number: "text",
    admitted_at: "instant",
    discharged_at: "instant",
    disposition: "text",
    span_from_moves: "bool",
    ...common,
  },
  cells: (stay, patientId, by) => [
    stay.id,
    by.facilityId,
    patientId,
    stay.number,
    stay.admittedAt,
    stay.dischargedAt,
    stay.disposition,
    stay.spanFromMoves,
    ...commonCells(stay, by),
  ],
};

export const wardStayTable: EntryTable<WardStay> = {
  kind: "ward-stay",
  table: "ward_stay",
  columns: {
    id: "int",
    stay_id: "int",
    ward_id: "int",
    bed: "text",
    start_at: "instant",
    end_at: "instant",
    absence_after: "text",
    ...common,
  },
  cells: (w, stayId, by) => [w.id, stayId, w.wardId, w.bed, w.startAt, w.endAt, w.absenceAfter, ...commonCells(w, by)],
};

export const catheterTable: EntryTable<Catheter> = {
  kind: "catheter",
  table: "catheter",
  columns: {
    id: "int",
    stay_id: "int",
    number: "text",
    kind: "text",
    inserted_at: "instant",
    in_place_on_arrival: "bool",
    removed_at: "instant",
    removed_after_at: "instant",
    removed_before_at: "instant",
    last_seen_at: "instant",
    indication: "text",
    size_fr: "real",
    balloon_ml: "real",
    insertion_record: "text",
    removal_record: "text",
    ...common,
  },
  cells: (c, stayId, by) => [
    c.id,
    stayId,
    c.number,
    c.kind,
    c.insertedAt,
    c.inPlaceOnArrival,
    c.removedAt,
    c.removedAfterAt,
    c.removedBeforeAt,
    c.lastSeenAt,
    c.indication,
    c.sizeFr,
    c.balloonMl,
    jsonText(c.insertionRecord),
    jsonText(c.removalRecord),
    ...commonCells(c, by),
  ],
};

function jsonText(record: object | null | undefined): string | null {
  return record ? JSON.stringify(record) : null;
}
