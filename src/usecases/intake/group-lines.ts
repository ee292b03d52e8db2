import { type IntakeLine, type LineOf, placeOf } from "../../domain/intake/intake-line.ts";
import type { LineFault } from "../../domain/intake/outcome.ts";

/** First letters of group keys: wards come first, then patients, then counts made by hand. */
export const groupKinds = { ward: "1 ", patient: "2 ", lostStay: "2s ", count: "3 " } as const;

/** What the database knows of the lines of a batch. */
export interface KnownPatients {
  /** The identifier of the patient who has a stay of that number. */
  ownerOf(stay: string): string | undefined;
  /** The identifier of the surviving patient of a merged one; the same identifier for all others. */
  survivorOf(identifier: string): string;
}

/** A line with what it is about. */
export interface KeyedLine {
  readonly line: IntakeLine;
  readonly entryKey: string;
  readonly fingerprint: string;
}

interface Said {
  readonly fingerprint: string;
  readonly place: string;
}

/**
 * Sorts lines into groups that are applied together: everything about one person, whatever file it stands in and under
 * whatever record of theirs. Lines come in the order wards, stays, moves, catheters, counts, so that the patient of a
 * stay is known before its catheters.
 */
export class LineGroups {
  readonly #patients = new Map<string, { patient: string; place: string }>();
  readonly #refusedStays = new Map<string, string>();
  readonly #said = new Map<string, Said>();

  /** A line of a stay could not be read, so nothing else in the folder can be said of that stay. */
  refuseStay(stay: string, place: string): void {
    if (!this.#refusedStays.has(stay)) this.#refusedStays.set(stay, place);
  }

  /** Stays that catheter lines name and no line before them described: the database may know them. */
  unknownStays(lines: readonly IntakeLine[]): string[] {
    const named = lines.flatMap((line) => (line.file === "catheters.csv" ? [line.values.stay] : []));
    return [...new Set(named)].filter((stay) => !this.#patients.has(stay));
  }

  /** The group of a line, and the fault that keeps it from having one. */
  place(keyed: KeyedLine, known: KnownPatients): { key: string; fault: LineFault | null } {
    const { line } = keyed;
    if (line.file === "wards.csv")
      return { key: groupKinds.ward + line.values.ward, fault: this.#contradiction(keyed) };
    if (line.file === "daily-counts.csv")
      return { key: groupKinds.count + line.values.ward, fault: this.#contradiction(keyed) };
    const { stay } = line.values;
    const first = this.#patients.get(stay);
    const patient = line.file === "catheters.csv" ? (first?.patient ?? known.ownerOf(stay)) : line.values.patient;
    const key = patient === undefined ? groupKinds.lostStay + stay : groupKinds.patient + known.survivorOf(patient);
    return { key, fault: this.#refusedStay(stay) ?? (line.file === "catheters.csv" ? null : this.#otherPatient(line)) };
  }

  #refusedStay(stay: string): LineFault | null {
    const other = this.#refusedStays.get(stay);
    if (other === undefined) return null;
    return { code: "stay-refused", column: "stay", detail: "The line of its stay was refused.", other };
  }

  #otherPatient(line: LineOf<"stays.csv"> | LineOf<"moves.csv">): LineFault | null {
    const { stay, patient } = line.values;
    const first = this.#patients.get(stay);
    if (!first) this.#patients.set(stay, { patient, place: placeOf(line) });
    if (!first || first.patient === patient) return null;
    const detail = "Another line says that this stay belongs to another patient.";
    return { code: "stay-of-another-patient", column: "patient", detail, other: first.place };
  }

  /** Of a ward, and of a day counted by hand, a folder can say one thing. */
  #contradiction({ line, entryKey, fingerprint }: KeyedLine): LineFault | null {
    const first = this.#said.get(entryKey);
    if (!first) this.#said.set(entryKey, { fingerprint, place: placeOf(line) });
    if (!first || first.fingerprint === fingerprint) return null;
    const detail = "Another line says something else about the same thing.";
    return { code: "line-contradicts", column: "ward", detail, other: first.place };
  }
}
