import type { Database, Statement } from "better-sqlite3";
import type { Draw } from "../../src/demo/draw.ts";
import { benchFacility } from "./history-size.ts";

const dayMs = 86_400_000;
const hourMs = 3_600_000;

/** A stay as its beds were written, with its catheter if it has one. Times are in UTC milliseconds, days whole numbers. */
export interface WrittenStay {
  readonly patientId: number;
  readonly wardId: number;
  readonly admitted: number;
  readonly left: number | null;
  readonly catheter: { readonly id: number; readonly inserted: number; readonly removed: number | null } | null;
}

/** How far a culture's case is, with how often, and how long its derivation is. Invented: no published figure is claimed. */
const cases = [
  { share: 0.6, state: "closed", outcome: "negative", steps: 1 },
  { share: 0.8, state: "closed", outcome: "not-usable", steps: 1 },
  { share: 0.97, state: "confirmed", outcome: "not-met", steps: 8 },
  { share: 1, state: "confirmed", outcome: "event", steps: 8 },
] as const;

/** Writes what people and the laboratory recorded of stays, and the audit trail of recording and of looking. */
export class CareWriter {
  readonly #draw: Draw;
  /** The last day of the history. */
  readonly #end: number;
  readonly #note: Statement;
  readonly #specimen: Statement;
  readonly #sign: Statement;
  readonly #case: Statement;
  readonly #audit: Statement;
  readonly #auditPatient: Statement;
  #last = 0;
  #audits = 0;

  constructor(database: Database, draw: Draw, end: number) {
    this.#draw = draw;
    this.#end = end;
    this.#note = database.prepare(
      "INSERT INTO catheter_note (id, catheter_id, kind, at, outcome, indication, recorded_at, recorded_by) VALUES (?, ?, 'review', ?, 'keep', 'output-critically-ill', ?, 1)",
    );
    this.#specimen = database.prepare(
      "INSERT INTO specimen (id, patient_id, kind, collected_at, method, status, organisms, recorded_at, recorded_by) VALUES (?, ?, 'urine', ?, 'culture', 'final', ?, ?, 1)",
    );
    this.#sign = database.prepare(
      "INSERT INTO sign (id, patient_id, day, sign, finding, recorded_at, recorded_by) VALUES (?, ?, ?, 'temperature', 'absent', ?, 1)",
    );
    this.#case = database.prepare(
      `INSERT INTO determination (case_id, number, patient_id, subject_kind, day, place_id, edition_id, outcome, event_day, ward_id, is_cauti,
         summary, reported, body, digest, known_through, settles_on, cause, determined_at, determined_by, state, may_count, revision, facility_id)
       VALUES (?, 1, ?, 'specimen', ?, ?, 'us-2024', ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, 'record-specimen', ?, 1, ?, ?, 1, ${benchFacility})`,
    );
    this.#audit = database.prepare(
      "INSERT INTO audit_entry (id, at, facility_id, person_id, action, details, seal_number, seal_hash) VALUES (?, ?, ?, 1, ?, ?, ?, ?)",
    );
    this.#auditPatient = database.prepare("INSERT INTO audit_patient (audit_id, patient_id) VALUES (?, ?)");
  }

  /** The reviews of a catheter, a culture of some stays, and an audit entry for each. */
  addStay(stay: WrittenStay): void {
    const { patientId, admitted, left, catheter } = stay;
    this.#saw("admit-patient", admitted, [patientId]);
    if (catheter) {
      this.#saw("record-insertion", catheter.inserted, [patientId]);
      const until = catheter.removed ?? this.#end * dayMs - dayMs;
      for (let at = catheter.inserted + 20 * hourMs; at < until; at += dayMs) {
        this.#note.run(++this.#last, catheter.id, at, at);
        this.#saw("write-note", at, [patientId]);
      }
      if (catheter.removed !== null) this.#saw("remove-catheter", catheter.removed, [patientId]);
    }
    if (this.#draw.chance(0.04)) this.#addCulture(stay);
    if (left !== null) this.#saw("discharge-patient", left, [patientId]);
  }

  /** A look at the round of a ward. */
  addView(at: number, patientIds: readonly number[]): void {
    this.#saw("view-round", at, patientIds);
  }

  #addCulture({ patientId, wardId, admitted }: WrittenStay): void {
    const collected = admitted + 2 * dayMs;
    const day = Math.floor(collected / dayMs);
    if (day + 5 > this.#end) return;
    const drawn = this.#draw.fraction();
    const { state, outcome, steps } = cases.find(({ share }) => drawn < share) ?? cases[0];
    const isEvent = outcome === "event";
    const caseId = ++this.#last;
    const organisms = [{ id: ++this.#last, name: "Escherichia coli", group: null, count: ">100000" }];
    const noGrowth = [{ id: this.#last, name: "No growth", group: null, count: null }];
    this.#specimen.run(
      ...[caseId, patientId, collected],
      JSON.stringify(outcome === "negative" ? noGrowth : organisms),
      collected + 2 * dayMs,
    );
    for (let i = -3; i <= 3; i++) this.#sign.run(++this.#last, patientId, day + i, collected);
    const step = {
      ...{ rule: "urine-culture", status: "held", day, sentence: "x".repeat(220), evidence: [] },
      ...{ nearest: null, lookUp: null },
    };
    const body = {
      ...{ subject: { kind: "specimen", id: caseId, day }, editionId: "us-2024", outcome, closes: state === "closed" },
      ...{ event: null, repeatOf: null, dependsOn: [], otherReading: null, hinges: [] },
      derivation: Array.from({ length: steps }, () => step),
    };
    const reported = JSON.stringify(["us-2024", outcome, null, null, null, null, null, null, [], []]);
    // A tenth of what a person decides waits, in the last two months alone: the rest was worked off.
    const waits = state === "confirmed" && day > this.#end - 60 && this.#draw.chance(0.1);
    this.#case.run(
      ...[caseId, patientId, day, wardId, outcome, isEvent ? day : null, isEvent ? wardId : null, isEvent ? 1 : 0],
      ...[outcome, reported, JSON.stringify(body), "0".repeat(64), day + 4, day + 4, collected],
      ...[
        waits ? "waiting" : state,
        JSON.stringify([{ wardId, month: new Date(collected).toISOString().slice(0, 7) }]),
      ],
    );
    this.#saw("record-specimen", collected, [patientId]);
    this.#saw("record-signs", collected, [patientId]);
  }

  #saw(action: string, at: number, patientIds: readonly number[]): void {
    const number = ++this.#audits;
    const time = at.toString(16).padStart(12, "0");
    const rest = number.toString(16).padStart(15, "0");
    const id = `${time.slice(0, 8)}-${time.slice(8)}-7${rest.slice(0, 3)}-8${rest.slice(3, 6)}-${rest.slice(6)}000`;
    this.#audit.run(id, at, benchFacility, action, '{"catheterId":1,"version":1}', number, "0".repeat(64));
    for (const patientId of patientIds) this.#auditPatient.run(id, patientId);
  }
}
