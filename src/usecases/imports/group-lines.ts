import {
  type IntakeLine,
  type LineOf,
  type PatientLine,
  placeOf,
  specimenKey,
} from "../../domain/intake/intake-line.ts";
import type { LineFault } from "../../domain/intake/outcome.ts";
import { specimenRefused } from "../../domain/intake/plan-cultures.ts";

/** First letters of group keys: wards come first, then patients, then counts made by hand. */
export const groupKinds = { ward: "1 ", patient: "2 ", lostStay: "2s ", count: "3 " } as const;

/** What the database knows of the lines of a batch. */
export interface KnownPatients {
  /** The identifier of the patient who has a stay of that number. */
  ownerOf(stay: string): string | undefined;
  /** The numbers of the stays that have a catheter of that number. */
  staysOf(catheter: string): readonly string[];
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
 * whatever record of theirs. Lines come in the order wards, stays, moves, catheters, reviews, specimens, signs, counts, so that the
 * patient of a stay is known before its catheters, and the stay of a catheter before its reviews.
 */
export class LineGroups {
  readonly #patients = new Map<string, { patient: string; place: string }>();
  readonly #staysOfCatheters = new Map<string, Set<string>>();
  readonly #refusedStays = new Map<string, string>();
  readonly #refusedSpecimens = new Map<string, string>();
  readonly #said = new Map<string, Said>();

  /** A line of a stay could not be read, so nothing else in the folder can be said of that stay. */
  refuseStay(stay: string, place: string): void {
    if (!this.#refusedStays.has(stay)) this.#refusedStays.set(stay, place);
  }

  /** A line of a specimen could not be read, so the specimen cannot be told from its other lines. */
  refuseSpecimen(key: string, place: string): void {
    if (!this.#refusedSpecimens.has(key)) this.#refusedSpecimens.set(key, place);
  }

  /** Stays of which no line before told whose they are, among these and those that lines name: the database may know. */
  unknownStays(lines: readonly IntakeLine[], more: readonly string[]): string[] {
    const named = lines.flatMap((line) =>
      "stay" in line.values && !("patient" in line.values) ? (line.values.stay ?? []) : [],
    );
    return [...new Set([...named, ...more])].filter((stay) => !this.#patients.has(stay));
  }

  /** The group of a line, and the fault that keeps it from having one. A review is given back with its stay. */
  place(keyed: KeyedLine, known: KnownPatients): { key: string; fault: LineFault | null; line: IntakeLine } {
    const { line } = keyed;
    if (line.file === "wards.csv")
      return { key: groupKinds.ward + line.values.ward, fault: this.#contradiction(keyed), line };
    if (line.file === "daily-counts.csv")
      return { key: groupKinds.count + line.values.ward, fault: this.#contradiction(keyed), line };
    if (line.file !== "reviews.csv") return this.#ofPatient(line, known);
    const stay = this.#stayOfReview(line, known);
    if (typeof stay !== "string") return { key: "", fault: stay, line };
    return this.#ofPatient({ ...line, values: { ...line.values, stay } }, known);
  }

  #ofPatient(line: PatientLine, known: KnownPatients): { key: string; fault: LineFault | null; line: IntakeLine } {
    const { stay } = line.values;
    const first = this.#patients.get(stay);
    const patient = "patient" in line.values ? line.values.patient : (first?.patient ?? known.ownerOf(stay));
    const key = patient === undefined ? groupKinds.lostStay + stay : groupKinds.patient + known.survivorOf(patient);
    if (line.file === "catheters.csv" && line.values.catheter !== null) {
      const stays = this.#staysOfCatheters.get(line.values.catheter) ?? new Set();
      this.#staysOfCatheters.set(line.values.catheter, stays.add(stay));
    }
    const others = line.file === "stays.csv" || line.file === "moves.csv" ? this.#otherPatient(line) : null;
    return { key, fault: this.#refusedStay(stay) ?? this.#refusedSpecimen(line) ?? others, line };
  }

  /** The stay that a review names, or the only one that has its catheter. */
  #stayOfReview({ values: { stay, catheter } }: LineOf<"reviews.csv">, known: KnownPatients): string | LineFault {
    if (stay !== null) return stay;
    const column = "catheter";
    if (catheter === null)
      return {
        code: "csv-cell-empty",
        column,
        detail: "A review names its catheter or its stay, and this one neither.",
      };
    const [only, another] = new Set([...(this.#staysOfCatheters.get(catheter) ?? []), ...known.staysOf(catheter)]);
    if (only === undefined) return { code: "catheter-unknown", column, detail: "No catheter has this number." };
    if (another === undefined) return only;
    return { code: "catheter-unclear", column, detail: "Catheters of several stays have this number." };
  }

  #refusedStay(stay: string): LineFault | null {
    const other = this.#refusedStays.get(stay);
    if (other === undefined) return null;
    return { code: "stay-refused", column: "stay", detail: "The line of its stay was refused.", other };
  }

  #refusedSpecimen(line: PatientLine): LineFault | null {
    const other = line.file === "specimens.csv" ? this.#refusedSpecimens.get(specimenKey(line.values)) : undefined;
    return other === undefined ? null : { ...specimenRefused, other };
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
