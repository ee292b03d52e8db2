import { statesAtWork } from "../../../shared/import-words.ts";
import type { Instant } from "../../domain/days/day-number.ts";
import { hasFilesToRead } from "../../store/import-files.ts";
import { countLines, dropLines } from "../../store/import-lines.ts";
import { type ImportRow, importsIn, setImportState } from "../../store/imports.ts";
import type { Store } from "../../store/store.ts";
import type { Act } from "../act.ts";
import { applyImport } from "./apply-import.ts";
import { endImport } from "./import-lines.ts";
import type { ImportResult } from "./intake-item.ts";

/** What is only received was not begun. */
const brokenOff = statesAtWork.filter((state) => state !== "received");

/**
 * What a start does about imports that were broken off: one that was being applied is finished; of one that was still
 * read or tried nothing counts, so it is dropped, or read anew when the database has its files.
 */
export async function resumeImports({ store, now }: { store: Store; now: Instant }): Promise<ImportResult[]> {
  const broken = await store.read((read) => importsIn(read, brokenOff));
  const results: ImportResult[] = [];
  for (const row of broken) {
    const claim = await store.claim(row.id);
    // Somebody is at work on it: it did not break off.
    if (!claim) continue;
    try {
      if (!(await putBack(store, row))) results.push(await finishImport({ store, now }, row));
    } finally {
      await claim.release();
    }
  }
  return results;
}

/** Lets an import whose files are here be read anew; false for any other, and for one that was decided. */
export function putBack(store: Store, { id, state }: ImportRow): Promise<boolean> {
  return store.tx(async (tx) => {
    if (state === "applying" || !(await hasFilesToRead(tx, id))) return false;
    await dropLines(tx, id);
    await setImportState(tx, id, "received");
    return true;
  });
}

/** In whose name an import goes on. */
export function actOf({ store, now }: { store: Store; now: Instant }, row: ImportRow): Act {
  const { facilityId, personId } = row;
  return { store, now, actor: { personId, facilityId, roles: [], wardIds: [] } };
}

/** Carries a decided import through, and drops one that was not decided. Its claim must be held. */
export async function finishImport(
  at: { store: Store; now: Instant },
  row: ImportRow,
  onStep?: () => void,
): Promise<ImportResult> {
  const { id, state, assumeInpatient } = row;
  const { store } = at;
  const act = actOf(at, row);
  if (state !== "applying") return endImport(act, id, "refused");
  const { staged = 0 } = await store.read((read) => countLines(read, id));
  await applyImport(
    act,
    { importId: id, total: staged },
    { assumeInpatient, ...(onStep ? { onProgress: onStep } : {}) },
  );
  return endImport(act, id, "applied");
}
