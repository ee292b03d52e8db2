import {
  type Catheter,
  newEntry,
  type PatientTimeline,
  type Stay,
  type WardStay,
} from "../../src/domain/timeline/timeline.ts";
import { utc } from "./utc.ts";

/** Where a timeline made up for a test belongs. */
export interface Place {
  readonly patientId: number;
  readonly a: number;
  readonly b: number;
  newId(): number;
}

/** A stay in which nothing is left out: every field of every entry has a value of its own. */
export function fullStay({ patientId, a, b, newId }: Place): Stay {
  const first: WardStay = {
    ...entry(newId(), ["repeated-hour:startAt"]),
    wardId: a,
    bed: "12 / window",
    startAt: utc("2024-03-01 10:00:00.001"),
    endAt: utc("2024-03-03 09:30"),
    absenceAfter: "procedure",
  };
  const second: WardStay = {
    ...entry(newId(), []),
    wardId: b,
    bed: null,
    startAt: utc("2024-03-03 18:00"),
    endAt: null,
    absenceAfter: null,
  };
  return {
    ...entry(newId(), ["repeated-hour:admittedAt", "repeated-hour:dischargedAt"]),
    patientId,
    number: "0012-é'\"",
    admittedAt: utc("2024-03-01 10:00:00.001"),
    dischargedAt: utc("2024-03-09 11:59:59.999"),
    disposition: "home",
    spanFromMoves: true,
    wardStays: [first, second],
    catheters: [fullCatheter(newId()), bareCatheter(newId())],
  };
}

function fullCatheter(id: number): Catheter {
  return {
    ...entry(id, ["repeated-hour:insertedAt"]),
    number: "C-7",
    kind: "indwelling-urethral",
    insertedAt: utc("2024-03-01 12:00:00.250"),
    inPlaceOnArrival: false,
    removedAt: utc("2024-03-04 08:00"),
    removedAfterAt: utc("2024-03-04 07:00"),
    removedBeforeAt: utc("2024-03-04 09:00"),
    lastSeenAt: utc("2024-03-04 06:59"),
    indication: "retention",
    sizeFr: 14.5,
    balloonMl: 10,
    insertionRecord: { handHygiene: true, attempts: 2, patientResponse: 'calm, "fine"' },
    removalRecord: { balloonWithdrawnMl: 9.5, catheterIntact: true, reason: "exchange" },
    noted: null,
  };
}

/** A catheter of which hardly anything is known. */
function bareCatheter(id: number): Catheter {
  return {
    ...entry(id, []),
    number: null,
    kind: "suprapubic",
    insertedAt: null,
    inPlaceOnArrival: true,
    removedAt: null,
    removedAfterAt: null,
    removedBeforeAt: null,
    lastSeenAt: null,
    indication: null,
    sizeFr: null,
    balloonMl: null,
    insertionRecord: null,
    removalRecord: null,
    noted: null,
  };
}

function entry(id: number, marks: readonly `repeated-hour:${string}`[]) {
  return { ...newEntry, id, marks };
}

/** A timeline of these stays. */
export function timelineOf(patientId: number, ...stays: readonly Stay[]): PatientTimeline {
  return { patientId, stays };
}
