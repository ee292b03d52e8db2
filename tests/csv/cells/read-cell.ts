import { Problem } from "../../../shared/problems.ts";
import type { CellReader, MarkKind } from "../../../src/csv/column.ts";
import { alderBay } from "../written-files.ts";

/** What a reader makes of a text: its value, or the code of its refusal; and the marks that it left. */
export function readCell(reader: CellReader<unknown>, text: string): { value: unknown; marks: MarkKind[] } {
  const marks: MarkKind[] = [];
  try {
    return { value: reader.read(text, { ...alderBay, mark: (kind) => marks.push(kind) }), marks };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    return { value: error.code, marks };
  }
}
