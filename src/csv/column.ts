import type { SourceSettings } from "../../shared/source-settings.ts";
import type { Zone } from "../domain/days/zone.ts";

/**
 * What is doubtful about an accepted value: a local time that occurs twice, of which the earlier instant was taken; a
 * day where a time is wanted, of which noon was taken; or 00:00 of a source that means by it that the hour is not known.
 */
export type MarkKind = "repeated-hour" | "time-unknown" | "no-hour";

/** What holds for every file of an import. */
export interface Reading {
  /** The facility's zone, in which times without an offset are local. */
  readonly zone: Zone;
  /** How files of this source are read. */
  readonly settings: SourceSettings;
}

/** What a reader may know beside the cell's text, and where it notes what is doubtful. */
export interface CellContext extends Reading {
  mark(kind: MarkKind): void;
}

/** How the cells of a column are read. */
export interface CellReader<Value> {
  /** Identifiers are watched for lost zeros and digits over all lines. */
  readonly isIdentifier: boolean;
  /** Times are watched for 00:00 that stands for no hour. */
  readonly isTime?: true;
  /**
   * The value of a cell's text, which is not empty and has no white space around it.
   * Refuses (throws a Problem) with a reason that does not repeat the text: it may be a patient's name.
   */
  read(text: string, context: CellContext): Value;
}

/** A column of a file. */
export interface Column<Value> {
  readonly reader: CellReader<unknown>;
  /** A required column must be in the header and its cells may not be empty. */
  readonly isRequired: boolean;
  /** What an empty cell, or a column that was left out, stands for. Not used when required. */
  readonly whenEmpty: Value | null;
}

/** A column that must be there with a value in every line. */
export function required<Value>(reader: CellReader<Value>): Column<Value> {
  return { reader, isRequired: true, whenEmpty: null };
}

/** A column that may be left out; null where it has no value. */
export function optional<Value>(reader: CellReader<Value>): Column<Value | null> {
  return { reader, isRequired: false, whenEmpty: null };
}

/** A column that may be left out and then stands for `fallback`. */
export function optionalOr<Value>(reader: CellReader<Value>, fallback: NoInfer<Value>): Column<Value> {
  return { reader, isRequired: false, whenEmpty: fallback };
}

/** The columns of a file by their names. */
export type Columns = Readonly<Record<string, Column<unknown>>>;

/** The values of a line: one for each column of its file. */
export type ValuesOf<C extends Columns> = {
  readonly [Name in keyof C]: C[Name] extends Column<infer Value> ? Value : never;
};

/** A file that is known by its name. */
export interface Layout<Name extends string = string, C extends Columns = Columns> {
  /** The file's name, in lower case. */
  readonly name: Name;
  readonly columns: C;
}
