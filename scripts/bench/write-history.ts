import type { Database, Statement } from "better-sqlite3";
import { type Draw, drawFrom } from "../../src/demo/draw.ts";
import { cachedFile } from "./cached-file.ts";
import { type DrawnStay, drawCatheter, drawStay } from "./draw-stay.ts";
import { benchFacility, type HistorySize, historyEnd } from "./history-size.ts";
import { writeFacility } from "./write-facility.ts";

/** Changes whenever the drawing does, so that no file of an older drawing is taken for the same history. */
const drawing = 1;
const yearMs = 365.25 * 86_400_000;

/** The SQLite file of a history, in the product's own tables; written on the first call. */
export function historyFile(size: HistorySize): Promise<{ file: string; writtenS: number }> {
  return cachedFile("history", [drawing, size], (database) => new HistoryWriter(database, size).write());
}

class HistoryWriter {
  readonly #size: HistorySize;
  readonly #draw: Draw;
  readonly #patient: Statement;
  readonly #stay: Statement;
  readonly #wardStay: Statement;
  readonly #catheter: Statement;
  /** When each patient can come again, by id. */
  readonly #freeFrom: number[] = [0];
  #stays = 0;
  #wardStays = 0;
  #catheters = 0;

  constructor(database: Database, size: HistorySize) {
    this.#size = size;
    this.#draw = drawFrom(size.seed);
    writeFacility(database, size.wards);
    this.#patient = database.prepare(
      "INSERT INTO patient (id, facility_id, identifier, survivor_id, merged_into_id, recorded_at, recorded_by) VALUES (?, ?, ?, ?, ?, 0, 1)",
    );
    this.#stay = database.prepare(
      "INSERT INTO stay (id, facility_id, patient_id, number, admitted_at, discharged_at, recorded_at, recorded_by) VALUES (?, ?, ?, ?, ?, ?, 0, 1)",
    );
    this.#wardStay = database.prepare(
      `INSERT INTO ward_stay (id, stay_id, ward_id, start_at, end_at, absence_after, void_key, void_reason, recorded_at, recorded_by)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?, 0, 1)`,
    );
    this.#catheter = database.prepare(
      `INSERT INTO catheter (id, stay_id, kind, inserted_at, in_place_on_arrival, removed_at, removed_after_at, removed_before_at, recorded_at, recorded_by)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?, 0, 1)`,
    );
  }

  write(): void {
    const { wardStays, years, wards } = this.#size;
    const start = historyEnd - years * yearMs;
    while (this.#wardStays < wardStays) {
      // Stays come in the order of admission, as a hospital records them.
      const share = this.#wardStays / wardStays;
      const admitted = Math.floor((start + share * years * yearMs) / 60_000) * 60_000;
      const most = Math.min(8, wardStays - this.#wardStays);
      this.#add(drawStay(this.#draw, { admitted, wards, most, until: historyEnd }));
    }
  }

  #add(stay: DrawnStay): void {
    this.#stays += 1;
    const patientId = this.#patientFor(stay);
    this.#stay.run(this.#stays, benchFacility, patientId, `S${this.#stays}`, stay.admitted, stay.discharged);
    // Drawn against what is still to write, so that the number asked for comes out exactly.
    const { wardStays, catheters } = this.#size;
    const left = wardStays - this.#wardStays;
    const wanted = ((catheters - this.#catheters) / left) * stay.wardStays.length;
    for (const { ward, start, end, absence, voided } of stay.wardStays) {
      const id = ++this.#wardStays;
      const reason = voided ? "recorded in error" : null;
      this.#wardStay.run(id, this.#stays, ward, start, end, absence, voided ? id : 0, reason);
    }
    const whole = Math.floor(wanted);
    const count = left === stay.wardStays.length ? wanted : whole + (this.#draw.chance(wanted - whole) ? 1 : 0);
    for (let i = 0; i < count; i++) this.#addCatheter(stay);
  }

  #addCatheter(stay: DrawnStay): void {
    const { kind, inserted, removed, removedAfter } = drawCatheter(this.#draw, stay, historyEnd);
    const before = removedAfter === null ? null : removedAfter + 7_200_000;
    this.#catheters += 1;
    const arrived = inserted === null ? 1 : 0;
    this.#catheter.run(this.#catheters, this.#stays, kind, inserted, arrived, removed, removedAfter, before);
  }

  /** A third of the stays are those of somebody who was here before; some records were merged into an earlier one. */
  #patientFor(stay: DrawnStay): number {
    const known = this.#freeFrom.length - 1;
    const until = stay.discharged ?? Number.POSITIVE_INFINITY;
    const again = this.#draw.whole(1, Math.max(known, 1));
    const free = known > 0 && (this.#freeFrom[again] ?? 0) <= stay.admitted;
    const fate = this.#draw.fraction();
    if (free && fate < 0.33) {
      this.#freeFrom[again] = until;
      return again;
    }
    const id = known + 1;
    const mergedInto = free && fate < 0.34 ? again : null;
    this.#patient.run(id, benchFacility, `P${id}`, mergedInto ?? id, mergedInto);
    if (mergedInto !== null) this.#freeFrom[mergedInto] = until;
    // A merged record gets no more stays, and none is merged into it.
    this.#freeFrom.push(mergedInto === null ? until : Number.POSITIVE_INFINITY);
    return id;
  }
}
