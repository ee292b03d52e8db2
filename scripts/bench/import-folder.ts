import { censusTime } from "../../shared/day.ts";
import { defaultSourceSettings } from "../../shared/source-settings.ts";
import { fingerprint } from "../../src/csv/fingerprint.ts";
import { readFolder } from "../../src/csv/read-folder.ts";
import { zoneNamed } from "../../src/domain/days/zone.ts";
import { migrate } from "../../src/store/migrate.ts";
import { openStore } from "../../src/store/open-store.ts";
import type { Store } from "../../src/store/store.ts";
import { importLines } from "../../src/usecases/imports/import-lines.ts";
import type { ImportResult, IntakeItem } from "../../src/usecases/imports/intake-item.ts";
import { setUpFacility } from "../../src/usecases/settings/set-up-facility.ts";
import { timed } from "./bench-line.ts";
import { benchZone, historyEnd } from "./history-size.ts";

const midnight = censusTime.parse("00:00");

/** What importing a folder into a new SQLite file took. */
export interface FolderImport {
  readonly result: ImportResult;
  readonly seconds: number;
  /** How many transactions the import wrote in. */
  readonly commits: number;
}

/** Imports a folder into a new file, as `npm run import -- --set-aside` does. */
export async function importFolder(folder: string, file: string): Promise<FolderImport> {
  await migrate(file);
  const store = openStore(file);
  try {
    const now = historyEnd;
    const person = { name: "First person", roles: ["prevention", "administrator"] } as const;
    const facility = { name: "Alder Bay Hospital", zone: benchZone, censusTime: midnight, person };
    const actor = await setUpFacility({ store, now }, facility);
    const counting = countingCommits(store);
    // In a million lines some lie in the hour that the clocks show twice, and a file cannot say in which of the two.
    const options = { dryRun: false, setAside: true, assumeInpatient: false };
    const { seconds, value: result } = await timed(() =>
      importLines({ store: counting.store, actor, now }, itemsOf(folder), options),
    );
    if (result.state !== "applied") throw new Error(`the import ended as ${result.state}`);
    return { result, seconds, commits: counting.commits() };
  } finally {
    await store.close();
  }
}

async function* itemsOf(folder: string): AsyncIterable<IntakeItem> {
  for await (const item of readFolder(folder, { zone: zoneNamed(benchZone), settings: defaultSourceSettings })) {
    if (item.type === "line") yield { ...item, fingerprint: fingerprint(item) };
    else if (item.type === "refused") yield item;
  }
}

function countingCommits(store: Store): { store: Store; commits: () => number } {
  let commits = 0;
  const tx: Store["tx"] = (work, options) => {
    commits += 1;
    return store.tx(work, options);
  };
  return { store: { ...store, tx }, commits: () => commits };
}
