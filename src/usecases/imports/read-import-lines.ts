import type { readImportLines as endpoint } from "../../../shared/api/import-lines.ts";
import type { InputOf } from "../../../shared/endpoint.ts";
import { type LineMark, lineMarks } from "../../domain/intake/outcome.ts";
import { headersOf } from "../../store/import-files.ts";
import { type SettledLine, settledLines } from "../../store/import-lines.ts";
import type { Act } from "../act.ts";
import { view } from "../view.ts";
import type { PlacedFault } from "./intake-item.ts";

const pageSize = 50;

/** A line of an import as it is told, before a door divides it into cells. */
export interface ToldLine {
  readonly file: string;
  /** The physical line; null when the whole file is meant. */
  readonly line: number | null;
  readonly text: string | null;
  readonly faults: readonly PlacedFault[];
  readonly marks: readonly string[];
  readonly reason: string | null;
}

/** Lines of an import with what is wrong with them, a page at a time. They speak of patients: the view is recorded. */
export function readImportLines(
  act: Act,
  { importId, kind, after }: InputOf<typeof endpoint>,
): Promise<{ lines: ToldLine[]; headers: ReadonlyMap<string, string>; next: string | null }> {
  return view(act, async (read, seen) => {
    const rows = await settledLines(read, importId, { kind, after: placeOf(after), count: pageSize + 1 });
    const shown = rows.slice(0, pageSize);
    seen({
      action: "view-import-lines",
      details: { importId, kind, lines: shown.length },
    });
    const last = rows.length > pageSize ? shown.at(-1) : undefined;
    return {
      lines: shown.map(told),
      headers: await headersOf(read, importId),
      next: last ? `${last.file}:${last.line}` : null,
    };
  });
}

function placeOf(after: string | undefined): { file: string; line: number } | null {
  const [file = "", line = ""] = after?.split(":") ?? [];
  return after === undefined ? null : { file, line: Number(line) };
}

function told({ file, line, faults, content, settledBy, reason }: SettledLine): ToldLine {
  const said = JSON.parse(faults) as (PlacedFault | LineMark)[];
  return {
    ...{ file, reason, text: content },
    line: line === 0 ? null : line,
    // What was wrong with a line that somebody settled is no matter any more.
    faults: settledBy === null ? said.filter((one) => typeof one !== "string") : [],
    marks: said.flatMap((one) => (typeof one === "string" ? [lineMarks[one]] : [])),
  };
}
