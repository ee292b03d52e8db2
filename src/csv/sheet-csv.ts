import { stringify } from "csv-stringify/sync";
import type { Sheet } from "../../shared/sheet.ts";

/** The rows of a sheet as CSV under the keys of its columns; a missing cell is empty. What to know about them stays out. */
export function sheetCsv({ columns, rows }: Sheet): string {
  const header = columns.map((column) => column.key);
  // A cell that a spreadsheet would take for a formula is made harmless.
  return stringify([header, ...rows], { escape_formulas: true });
}
