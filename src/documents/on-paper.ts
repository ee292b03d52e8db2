import type { Sheet, SheetCell } from "../../shared/sheet.ts";

/** A sheet as paper shows it: a column of words in which no row says anything only takes width from the others. */
export function onPaper(sheet: Sheet): Sheet {
  const rows = sheet.total === null ? sheet.rows : [...sheet.rows, sheet.total];
  const isShown = sheet.columns.map(
    ({ kind }, at) => at === 0 || kind !== "text" || rows.some((row) => (row[at] ?? "") !== ""),
  );
  const shown = <T>(list: readonly T[]): T[] => list.filter((_, at) => isShown[at]);
  return {
    ...sheet,
    columns: shown(sheet.columns),
    rows: sheet.rows.map((row) => shown<SheetCell>(row)),
    total: sheet.total === null ? null : shown<SheetCell>(sheet.total),
  };
}
