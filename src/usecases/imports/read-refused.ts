import type { LineMark } from "../../domain/intake/outcome.ts";
import { type SettledLine, settledLines } from "../../store/import-lines.ts";
import type { Store } from "../../store/store.ts";
import type { PlacedFault } from "./intake-item.ts";

export interface RefusedLine {
  readonly file: string;
  /** The physical line; null when the whole file is meant. */
  readonly line: number | null;
  readonly faults: readonly PlacedFault[];
}

/** The refused lines of an import in the order of files and lines, a page at a time. */
export async function* refusedLines(store: Store, importId: number): AsyncIterable<RefusedLine> {
  for await (const { file, line, faults } of linesOf(store, importId, "refused"))
    yield { file, line: line === 0 ? null : line, faults: JSON.parse(faults) as PlacedFault[] };
}

/** A line that was stored and is doubtful. */
export interface MarkedLine {
  readonly file: string;
  readonly line: number;
  readonly marks: readonly LineMark[];
}

/** The marked lines of an import in the order of files and lines, a page at a time. */
export async function* markedLines(store: Store, importId: number): AsyncIterable<MarkedLine> {
  for await (const { file, line, faults } of linesOf(store, importId, "marked"))
    yield { file, line, marks: JSON.parse(faults) as LineMark[] };
}

async function* linesOf(store: Store, importId: number, kind: "refused" | "marked"): AsyncIterable<SettledLine> {
  let after: { file: string; line: number } | null = null;
  do {
    const page = await pageAfter(store, importId, { kind, after });
    yield* page;
    after = page.at(-1) ?? null;
  } while (after !== null);
}

function pageAfter(
  store: Store,
  importId: number,
  which: { kind: "refused" | "marked"; after: { file: string; line: number } | null },
): Promise<SettledLine[]> {
  return store.read((read) => settledLines(read, importId, which));
}
