import { settledLines } from "../../store/import-lines.ts";
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
  let after: { file: string; line: number } | null = null;
  while (true) {
    const page = await pageAfter(store, importId, after);
    for (const { file, line, faults } of page)
      yield { file, line: line === 0 ? null : line, faults: JSON.parse(faults) as PlacedFault[] };
    after = page.at(-1) ?? null;
    if (after === null) return;
  }
}

function pageAfter(
  store: Store,
  importId: number,
  after: { file: string; line: number } | null,
): ReturnType<typeof settledLines> {
  return store.read((read) => settledLines(read, importId, { kind: "refused", after }));
}
