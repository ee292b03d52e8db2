import { createHash } from "node:crypto";
import { existsSync, mkdirSync, renameSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import Database from "better-sqlite3";
import { type Draw, drawFrom } from "../../src/demo/draw.ts";
import { committedMigrations, migrate } from "../../src/store/migrate.ts";
import { type DrawnStay, drawCatheter, drawStay } from "./draw-stay.ts";
import { benchFacility, benchZone, type HistorySize, historyEnd } from "./history-size.ts";

/** Changes whenever the drawing does, so that no file of an older drawing is taken for the same history. */
const drawing = 1;
const yearMs = 365.25 * 86_400_000;

/**
 * The SQLite file of a history, of the product's own tables, written on the first call and kept in the folder for
 * temporary files. Returns its path and whether it was there already.
 */
export async function historyFile(size: HistorySize): Promise<{ file: string; cached: boolean }> {
  const checksums = committedMigrations("sqlite").map((migration) => migration.checksum);
  const key = createHash("sha256")
    .update(JSON.stringify([drawing, size, checksums]))
    .digest("hex")
    .slice(0, 16);
  const folder = join(tmpdir(), "dwell-ledger-bench");
  const file = join(folder, `history-${key}.sqlite`);
  if (existsSync(file)) return { file, cached: true };
  mkdirSync(folder, { recursive: true });
  const unfinished = `${file}.${process.pid}`;
  await migrate(unfinished);
  const database = new Database(unfinished);
  database.pragma("journal_mode = WAL");
  database.transaction(() => new HistoryWriter(database, size).write())();
  database.exec("ANALYZE");
  database.pragma("wal_checkpoint(TRUNCATE)");
  database.close();
  for (const rest of ["-wal", "-shm"]) rmSync(`${unfinished}${rest}`, { force: true });
  renameSync(unfinished, file);
  return { file, cached: false };
}

class HistoryWriter {
  readonly #size: HistorySize;
  readonly #draw: Draw;
  readonly #patient: Database.Statement;
  readonly #stay: Database.Statement;
  readonly #wardStay: Database.Statement;
  readonly #catheter: Database.Statement;
  /** When each patient can come again, by id. */
  readonly #freeFrom: number[] = [0];
  #stays = 0;
  #wardStays = 0;
  #catheters = 0;

  constructor(database: Database.Database, size: HistorySize) {
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

function writeFacility(database: Database.Database, wards: number): void {
  database
    .prepare("INSERT INTO facility (id, name, zone, recorded_at) VALUES (?, 'Alder Bay Hospital', ?, 0)")
    .run(benchFacility, benchZone);
  database
    .prepare(
      "INSERT INTO facility_census (facility_id, from_day, time, recorded_at, recorded_by) VALUES (?, 0, '00:00', 0, 1)",
    )
    .run(benchFacility);
  database.prepare("INSERT INTO person (id, name, recorded_at) VALUES (1, 'First person', 0)").run();
  const ward = database.prepare(
    "INSERT INTO ward (id, facility_id, code, recorded_at, recorded_by) VALUES (?, ?, ?, 0, 1)",
  );
  const setting = database.prepare(
    "INSERT INTO ward_setting (ward_id, from_day, name, setting, recorded_at, recorded_by) VALUES (?, 0, ?, ?, 0, 1)",
  );
  for (let id = 1; id <= wards; id++) {
    ward.run(id, benchFacility, `W${id}`);
    // One ward in fifty is an outpatient department, where nobody earns a patient-day.
    setting.run(id, `Ward ${id}`, id % 50 === 0 ? "outpatient" : "inpatient");
  }
}
