import { notFinalWords } from "../../../shared/figure-words.ts";
import type { Sheet, SheetCell, SheetColumn } from "../../../shared/sheet.ts";
import { openTogether, unwatchedSentences, type WardInfections } from "./infections.ts";

const columns: SheetColumn[] = [
  { key: "cautis", label: "CAUTIs", kind: "whole", unit: "events" },
  { key: "waiting", label: "Waiting for confirmation", kind: "whole", unit: "cultures" },
  { key: "cannot_tell", label: "Cannot be determined", kind: "whole", unit: "cultures" },
  { key: "cautis_not_final", label: "Not final", kind: "text", unit: null },
];

/**
 * The sheet of a month with the infections of its wards, one for each row, before the note. A ward that nobody watches has
 * no count of events: that nothing was reported there says nothing.
 */
export function withInfections(sheet: Sheet, infections: readonly WardInfections[]): Sheet {
  const at = sheet.columns.length - 1;
  const insert = (row: readonly SheetCell[], cells: readonly SheetCell[]) => row.toSpliced(at, 0, ...cells);
  const cellsOf = (one: WardInfections | undefined): SheetCell[] =>
    one
      ? [one.watch ? one.cautis : null, one.waiting, one.cannotTell, one.watch ? notFinal(one.open.length) : ""]
      : [null, null, null, ""];
  const watched = infections.filter(({ watch }) => watch !== null);
  const open = openTogether(infections);
  const total = [
    watched.length === 0 ? null : watched.reduce((all, { cautis }) => all + cautis, 0),
    ...[open.waiting, open["cannot-tell"], notFinal(openTogether(watched).all)],
  ];
  const unwatched = infections.flatMap(({ watch, cautis: count }, at) =>
    watch === null ? [{ code: String(sheet.rows[at]?.[0] ?? ""), count }] : [],
  );
  const says =
    "CAUTIs are confirmed events of units under surveillance, by location of attribution and date of event. Open cultures are not in the count.";
  return {
    ...sheet,
    columns: sheet.columns.toSpliced(at, 0, ...columns),
    rows: sheet.rows.map((row, i) => insert(row, cellsOf(infections[i]))),
    total: sheet.total && insert(sheet.total, total),
    cautions: [...sheet.cautions, says, ...unwatchedSentences(unwatched)],
  };
}

function notFinal(open: number): string {
  return open === 0 ? "" : notFinalWords(open);
}
