import type { Month } from "../../../shared/day.ts";
import type { ImportState } from "../../../shared/import-words.ts";
import type { ProblemCode } from "../../../shared/problems.ts";
import type { IntakeLine } from "../../domain/intake/intake-line.ts";
import type { LineAbout } from "../../domain/intake/line-about.ts";
import type { WardQuestion } from "../../domain/intake/ward-codes.ts";

/** A line that a door could read, with a mark by which it is known again. */
export type ReadLine = IntakeLine & { readonly type: "line"; readonly fingerprint: string };

/** A line, or a whole file, that a door could not read. */
export interface UnreadLine {
  readonly type: "refused";
  readonly file: string;
  readonly line: number | null;
  readonly raw: string;
  /** Nothing behind this place was read, so the file cannot be stored in part. */
  readonly wholeFile: boolean;
  readonly faults: readonly PlacedFault[];
  /** The stay that the line names, where that much could be read. */
  readonly stay: string | null;
  /** The specimen that the line is about, where that much could be read. */
  readonly specimen?: string;
  /** What else the line names, as far as it could be read; null for a whole file. */
  readonly about: LineAbout | null;
}

export interface PlacedFault {
  readonly code: ProblemCode;
  readonly line?: number | null;
  readonly column: string | null;
  readonly position?: number | null;
  readonly detail: string;
  readonly remedy?: string;
  readonly other?: string;
}

/** A row without anything in it: counted, so that every row of a file is accounted for. */
export interface BlankRow {
  readonly type: "blank";
  readonly file: string;
  readonly line: number;
}

export type IntakeItem = ReadLine | UnreadLine | BlankRow;

export interface ImportOptions {
  /** Try everything and store nothing. */
  readonly dryRun: boolean;
  /** Store what can be stored and keep the refused lines for repair; else a refused line stops the whole folder. */
  readonly setAside: boolean;
  /** A ward whose setting nobody gave counts as an inpatient ward, and is marked. */
  readonly assumeInpatient: boolean;
  /** The number of the source that the files come from; the facility's own when left out. */
  readonly sourceId?: number;
  /** What a person answered about codes of wards that are not known, and who is asked about the others. */
  readonly wards?: WardAnswers;
  readonly onProgress?: (progress: ImportProgress) => void;
}

export interface ImportProgress {
  readonly phase: "reading" | "checking" | "applying";
  /** Lines done; the total is known once everything was read. */
  readonly done: number;
  readonly total: number | null;
}

/** What a person answers about a code that no ward has: the code of the ward that it means, or null for a new ward. */
export interface WardAnswer {
  readonly code: string;
  readonly sameAs: string | null;
}

export interface WardAnswers {
  readonly answers: readonly WardAnswer[];
  /** Is told what was not answered; true stops the import before anything is stored. */
  readonly ask: (questions: readonly WardQuestion[]) => boolean;
}

export interface ImportResult {
  readonly importId: number;
  readonly state: ImportState;
  readonly accepted: number;
  /** Accepted, with something doubtful about them. */
  readonly marked: number;
  readonly unchanged: number;
  readonly refused: number;
  readonly blank: number;
  /** Rows of each file by what became of them. */
  readonly files: readonly FileRows[];
  /** Of a dry run: signed months of which lines would change or add entries. */
  readonly signedMonths?: readonly Month[];
}

/** The rows of a file that were read: each is accepted, rejected or blank. */
export interface FileRows {
  readonly file: string;
  readonly accepted: number;
  readonly rejected: number;
  readonly blank: number;
}
