import type { Sheet, SheetCell, SheetColumn } from "../../../shared/sheet.ts";
import type { WardInfections } from "./infections.ts";

const columns: SheetColumn[] = [
  { key: "cautis", label: "CAUTIs", kind: "whole", unit: "events" },
  { key: "waiting", label: "Waiting for confirmation", kind: "whole", unit: "cultures" },
  { key: "cannot_tell", label: "Cannot be determined", kind: "whole", unit: "cultures" },
];

/**
 * The sheet of a month with the infections of its wards, one for each row, before the note. A ward that nobody watches has
 * no count of events: that nothing was reported there says nothing.
 */
export function withInfections(sheet: Sheet, infections: readonly WardInfections[]): Sheet {
  const at = sheet.columns.length - 1;
  const insert = (row: readonly SheetCell[], cells: readonly SheetCell[]) => row.toSpliced(at, 0, ...cells);
  const cellsOf = (one: WardInfections | undefined): SheetCell[] =>
    one ? [one.watch ? one.cautis : null, one.waiting, one.cannotTell] : [null, null, null];
  const watched = infections.filter(({ watch }) => watch !== null);
  const sum = (list: readonly WardInfections[], key: "cautis" | "waiting" | "cannotTell") =>
    list.reduce((all, one) => all + one[key], 0);
  const total = [
    watched.length === 0 ? null : sum(watched, "cautis"),
    sum(infections, "waiting"),
    sum(infections, "cannotTell"),
  ];
  const says =
    "CAUTIs are confirmed events of watched wards, by location of attribution and date of event; what waits or cannot be determined stands beside them.";
  return {
    ...sheet,
    columns: sheet.columns.toSpliced(at, 0, ...columns),
    rows: sheet.rows.map((row, i) => insert(row, cellsOf(infections[i]))),
    total: sheet.total && insert(sheet.total, total),
    cautions: [...sheet.cautions, says],
  };
}
