import { defaultSourceSettings, type SourceSettings } from "../../../shared/source-settings.ts";
import { itemsFrom } from "../../../src/csv/intake-items.ts";
import { readSources } from "../../../src/csv/read-sources.ts";
import { zoneNamed } from "../../../src/domain/days/zone.ts";
import type { Store } from "../../../src/store/store.ts";
import type { Act } from "../../../src/usecases/act.ts";
import { importLines } from "../../../src/usecases/imports/import-lines.ts";
import type { ImportOptions, ImportResult, IntakeItem } from "../../../src/usecases/imports/intake-item.ts";
import { verifyLedger } from "../../../src/usecases/jobs/check-ledger.ts";

/** Files by their names, each as its lines below a header: `{ "moves.csv": ["stay,patient", "S1,P1"] }`. */
export type Files = Readonly<Record<string, readonly string[]>>;

/** What the CSV door reads from files; local times are in that zone. */
export function itemsOf(files: Files, zone = "UTC", settings = defaultSourceSettings): AsyncIterable<IntakeItem> {
  const sources = Object.entries(files).map(([name, lines]) => ({
    name,
    open: async function* () {
      yield new TextEncoder().encode(lines.map((line) => `${line}\n`).join(""));
    },
  }));
  return itemsFrom(readSources(sources, { zone: zoneNamed(zone), settings }), () => undefined);
}

/** Imports files as the command line does. */
export function importFiles(
  act: Act,
  files: Files,
  { settings, ...options }: Partial<ImportOptions> & { readonly settings?: SourceSettings } = {},
): Promise<ImportResult> {
  return importLines(act, itemsOf(files, "UTC", settings), {
    dryRun: false,
    setAside: false,
    assumeInpatient: false,
    ...options,
  });
}

/** How many lines came to what, as text: `applied: 2 accepted, 1 marked, 0 unchanged, 0 refused`. */
export function resultText({ state, accepted, marked, unchanged, refused }: ImportResult): string {
  return `${state}: ${accepted} accepted, ${marked} marked, ${unchanged} unchanged, ${refused} refused`;
}

/** What became of each line that an import still has: `moves.csv 2 accepted`. */
export function linesOf(store: Store, importId: number): Promise<string[]> {
  return store.read(async (read) => {
    const rows = await read.db.importLine.findMany({
      where: { importId },
      orderBy: [{ file: "asc" }, { line: "asc" }],
    });
    return rows.map(({ file, line, state }) => `${file} ${line} ${state}`);
  });
}

/** How many rows of the facility's ledger differ from a recount, and how many it has. */
export async function ledgerOfAll(act: Act): Promise<{ rows: number; differences: number }> {
  const { rows, differences } = await verifyLedger(act);
  return { rows, differences: differences.length };
}
