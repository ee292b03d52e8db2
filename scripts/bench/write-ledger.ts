import type { Database, Statement } from "better-sqlite3";
import { type Draw, drawFrom } from "../../src/demo/draw.ts";
import { cachedFile } from "./cached-file.ts";
import { benchFacility, historyEnd } from "./history-size.ts";
import { CareWriter } from "./write-care.ts";
import { writeFacility } from "./write-facility.ts";

/** How large a ledger is: every bed of every inpatient ward is taken all the time. */
export interface LedgerSize {
  readonly seed: number;
  readonly years: number;
  readonly wards: number;
  readonly bedsAWard: number;
  /** With what people and the laboratory recorded, and the audit trail. */
  readonly care?: true;
}

/** Changes whenever the drawing does. */
const drawing = 8;
const dayMs = 86_400_000;
/** 15:00 UTC: some time in the morning of the facility, the whole year. */
const morningMs = 15 * 3_600_000;

/**
 * The SQLite file of a ledger with the stays behind it: ended ones with their ledger rows, and in every bed one that
 * lasts. Written on the first call.
 */
export function ledgerFile(size: LedgerSize): Promise<{ file: string; writtenS: number }> {
  const { years, wards, care } = size;
  return cachedFile(`${care ? "care" : "ledger"}${years}-${wards}`, [drawing, size], (database) =>
    new LedgerWriter(database, size).write(),
  );
}

class LedgerWriter {
  readonly #size: LedgerSize;
  readonly #draw: Draw;
  readonly #patient: Statement;
  readonly #stay: Statement;
  readonly #wardStay: Statement;
  readonly #catheter: Statement;
  readonly #days: Statement;
  readonly #end = Math.floor(historyEnd / dayMs);
  readonly #care: CareWriter | null;
  #last = 0;
  #catheters = 0;

  constructor(database: Database, size: LedgerSize) {
    this.#size = size;
    this.#draw = drawFrom(size.seed);
    writeFacility(database, size.wards);
    this.#care = size.care ? new CareWriter(database, this.#draw, this.#end) : null;
    if (size.care) writeSurveillance(database, size);
    this.#patient = database.prepare(
      "INSERT INTO patient (id, facility_id, identifier, survivor_id, recorded_at, recorded_by) VALUES (?, ?, ?, ?, 0, 1)",
    );
    this.#stay = database.prepare(
      "INSERT INTO stay (id, facility_id, patient_id, number, admitted_at, discharged_at, recorded_at, recorded_by) VALUES (?, ?, ?, ?, ?, ?, 0, 1)",
    );
    this.#wardStay = database.prepare(
      "INSERT INTO ward_stay (id, stay_id, ward_id, start_at, end_at, recorded_at, recorded_by) VALUES (?, ?, ?, ?, ?, 0, 1)",
    );
    this.#catheter = database.prepare(
      "INSERT INTO catheter (id, stay_id, kind, inserted_at, removed_at, recorded_at, recorded_by) VALUES (?, ?, 'indwelling-urethral', ?, ?, 0, 1)",
    );
    this.#days = database.prepare(
      "INSERT INTO patient_day (patient_id, day, ward_id, stay_id, catheter) VALUES (?, ?, ?, ?, ?)",
    );
  }

  write(): void {
    const { years, wards, bedsAWard } = this.#size;
    const end = this.#end;
    const beds = Array.from({ length: wards * bedsAWard }, (_, i) => 1 + Math.floor(i / bedsAWard));
    const open = beds.filter((ward) => ward % 50 !== 0);
    const start = end - Math.round(years * 365.25);
    const free = open.map(() => start);
    // Day by day, as a hospital records them: what belongs to one month lies together.
    const there = open.map(() => 0);
    for (let day = start; day < end; day++) {
      for (const [bed, ward] of open.entries()) {
        if (free[bed] !== day) continue;
        free[bed] = this.#addStay({ ward, day, end });
        there[bed] = this.#last;
      }
      // Each round is looked at once a day.
      for (let bed = 0; bed < open.length; bed += bedsAWard)
        this.#care?.addView(day * dayMs + morningMs + 3_600_000, there.slice(bed, bed + bedsAWard));
    }
  }

  /** Writes a stay of some days from `day` on; returns the day on which the bed is free. */
  #addStay({ ward, day, end }: { ward: number; day: number; end: number }): number {
    const id = ++this.#last;
    // One stay in 200 lasts for months.
    const free = day + (this.#draw.chance(0.005) ? this.#draw.whole(63, 150) : this.#draw.whole(3, 17));
    const admitted = day * dayMs + morningMs;
    const left = free >= end ? null : free * dayMs + morningMs;
    this.#patient.run(id, benchFacility, `P${id}`, id);
    this.#stay.run(id, benchFacility, id, `S${id}`, admitted, left);
    this.#wardStay.run(id, id, ward, admitted, left);
    // The sums of months are counted apart without catheters that are still in place.
    if (left === null && !this.#care) return end;
    const catheterDays = this.#draw.chance(0.3) ? this.#draw.whole(1, 6) : 0;
    const inPlaceUntil = admitted + catheterDays * dayMs;
    const removed = left === null ? (inPlaceUntil < end * dayMs ? inPlaceUntil : null) : Math.min(inPlaceUntil, left);
    const catheter = catheterDays === 0 ? null : { id: ++this.#catheters, inserted: admitted, removed };
    if (catheter) this.#catheter.run(catheter.id, id, admitted, removed);
    this.#care?.addStay({ patientId: id, wardId: ward, admitted, left, catheter });
    if (left === null) return end;
    // The census at 00:00 finds the patient from the day after the arrival to the day of leaving.
    for (let i = 1; i <= free - day; i++) this.#days.run(id, day + i, ward, id, i <= catheterDays ? 1 : 0);
    return free;
  }
}

/** Every inpatient ward is under surveillance from the first month on. */
function writeSurveillance(database: Database, { years, wards }: LedgerSize): void {
  const first = new Date(historyEnd - Math.round(years * 365.25) * dayMs).toISOString().slice(0, 7);
  const scope = database.prepare(
    "INSERT INTO scope (id, ward_id, from_month, edition, recorded_at, recorded_by) VALUES (?, ?, ?, 'us-2024', 0, 1)",
  );
  for (let id = 1; id <= wards; id++) if (id % 50 !== 0) scope.run(id, id, first);
}
