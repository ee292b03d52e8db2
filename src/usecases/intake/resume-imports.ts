import type { Instant } from "../../domain/days/day-number.ts";
import { countLines } from "../../store/import-lines.ts";
import { type ImportRow, importsIn } from "../../store/imports.ts";
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
  for (const row of broken) {
    const claim = await store.claim(row.id);
    // Somebody is at work on it: it did not break off.
    if (!claim) continue;
    try {
      results.push(await finish({ store, now }, row));
    } finally {
      await claim.release();
    }
  }
  return results;
}

async function finish({ store, now }: { store: Store; now: Instant }, row: ImportRow): Promise<ImportResult> {
  const { id, facilityId, personId, state, assumeInpatient } = row;
  const act: Act = { store, now, actor: { personId, facilityId, roles: [], wardIds: [] } };
  if (state !== "applying") return endImport(act, id, "refused");
  const { staged = 0 } = await store.read((read) => countLines(read, id));
  await applyImport(act, { importId: id, total: staged }, { assumeInpatient });
  return endImport(act, id, "applied");
}
