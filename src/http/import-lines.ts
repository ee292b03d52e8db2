import type { readImportLines } from "../../shared/api/import-lines.ts";
import type { OutputOf } from "../../shared/endpoint.ts";
import { problems } from "../../shared/problems.ts";
import { cellsOf } from "../csv/line-of-values.ts";
import { layoutNamed } from "../csv/sent-files.ts";
import type { ToldLine } from "../usecases/imports/read-import-lines.ts";

/** Lines of an import with their cells, and with the remedy of each fault. */
export function withCells(told: {
  lines: readonly ToldLine[];
  headers: ReadonlyMap<string, string>;
  next: string | null;
}): OutputOf<typeof readImportLines> {
  const headers = new Map([...told.headers].map(([name, header]) => [layoutNamed(name)?.name, header]));
  return {
    lines: told.lines.map(({ file, line, text, faults, marks, reason }) => ({
      ...{ file, line, text, reason },
      cells: line === null || text === null ? null : cellsOf(file, text, headers.get(layoutNamed(file)?.name)),
      faults: faults.map(({ code, line: at = null, column, detail, remedy, other = null }) => ({
        ...{ code, column, detail, other },
        line: at === line ? null : at,
        remedy: remedy ?? problems[code].remedy,
      })),
      marks: [...marks],
    })),
    next: told.next,
  };
}
