import type { ProblemCode } from "../../shared/problems.ts";
import type { LineAbout } from "../domain/intake/line-about.ts";
import type { Columns, Layout, MarkKind, ValuesOf } from "./column.ts";
import type { FileLayout } from "./layout.ts";

/** Something doubtful about an accepted value. */
export interface CsvMark {
  readonly kind: MarkKind;
  /** The column's name. */
  readonly column: string;
}

/** A line of one file that could be read. */
export interface LineOf<Name extends string, C extends Columns> {
  readonly type: "line";
  readonly file: Name;
  /** The physical line in which the record begins; the first line of the file is 1. */
  readonly line: number;
  /** Instants are UTC milliseconds, days are day numbers; a value that is not there is null. */
  readonly values: ValuesOf<C>;
  readonly marks: readonly CsvMark[];
  /** The record as it stands in the file, without the line end. */
  readonly raw: string;
}

type LineOfLayout<L> = L extends Layout<infer Name, infer C> ? LineOf<Name, C> : never;

/** A line that could be read; `file` says which values it has. Long texts share memory with their neighbors. */
export type CsvLine = LineOfLayout<FileLayout>;

/** One thing that is wrong, with its place. Repeats no value that may be a patient's. */
export interface CsvFault {
  readonly code: ProblemCode;
  readonly file: string;
  /** The physical line; null when the whole file is meant. */
  readonly line: number | null;
  /** The column's name as the layout spells it; null when none is meant or it is not known. */
  readonly column: string | null;
  /** The column's place in the file, from 1. */
  readonly position: number | null;
  /** One sentence that names what is wrong. */
  readonly detail: string;
  /** One sentence that says how to mend it. */
  readonly remedy: string;
}

/** A line, or a whole file, that cannot be read, with every fault found in it. */
export interface CsvRefused {
  readonly type: "refused";
  readonly file: string;
  readonly line: number | null;
  /** The line as it stands in the file, without the line end; empty when it is not a single line that is refused. */
  readonly raw: string;
  /** True when nothing behind this place was read: such a file cannot be stored in part. */
  readonly wholeFile: boolean;
  readonly faults: readonly CsvFault[];
  /** The stay that the line names, where that much could be read: what else is said of it has no ground then. */
  readonly stay: string | null;
  /** The same of a specimen: its other lines are not the whole result then. */
  readonly specimen?: string;
  /** What the line names, as far as it could be read; null for a whole file. */
  readonly about: LineAbout | null;
}

/** Something that a person should know and that stops nothing. */
export interface CsvNotice {
  readonly type: "notice";
  readonly code: "file-unknown" | "header-only" | "rows-blank" | "zeros-lost" | "digits-lost" | "many-midnights";
  /** Null when it is not about one file. */
  readonly file: string | null;
  readonly detail: string;
}

/** A row without anything in it, such as the empty cells of a spreadsheet. */
export interface CsvBlank {
  readonly type: "blank";
  readonly file: string;
  readonly line: number;
}

/** What reading gives, in the order of the files and of their lines. */
export type CsvItem = CsvLine | CsvRefused | CsvBlank | CsvNotice;
