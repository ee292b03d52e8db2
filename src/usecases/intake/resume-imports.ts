import type { Instant } from "../../domain/days/day-number.ts";
import { countLines } from "../../store/import-lines.ts";
import { importsIn } from "../../store/imports.ts";
import type { Store } from "../../store/store.ts";
import type { Act } from "../act.ts";
import { applyImport } from "./apply-import.ts";
import { endImport } from "./import-lines.ts";
import type { ImportResult } from "./intake-item.ts";

/**
 * What a start does about imports that were broken off: one that was being applied is finished, one that was still
 * read or tried is dropped, since nothing of it counts.
 */
export async function resumeImports({ store, now }: { store: Store; now: Instant }): Promise<ImportResult[]> {
  const broken = await store.read((read) => importsIn(read, ["staging", "checking", "applying"]));
  const results: ImportResult[] = [];
  for (const { id, facilityId, personId, state, assumeInpatient } of broken) {
    const act: Act = { store, now, actor: { personId, facilityId, roles: [], wardIds: [] } };
    if (state !== "applying") {
      results.push(await endImport(act, id, "refused"));
      continue;
    }
    const { staged = 0 } = await store.read((read) => countLines(read, id));
    await applyImport(act, { importId: id, total: staged }, { assumeInpatient });
    results.push(await endImport(act, id, "applied"));
  }
  return results;
}
