import { statesAtWork } from "../../../shared/import-words.ts";
import type { Instant } from "../../domain/days/day-number.ts";
import { filesToRead, forgetTexts, type SentFile } from "../../store/import-files.ts";
import { type ImportRow, importsIn, noteImport, setImportState } from "../../store/imports.ts";
import type { Claim, Store } from "../../store/store.ts";
import { checkImport } from "./check-import.ts";
import type { IntakeItem } from "./intake-item.ts";
import { actOf, finishImport, putBack } from "./resume-imports.ts";
import { type ReadingRules, rulesOfImport } from "./source-of-import.ts";
import { stageImport } from "./stage-import.ts";
import { questionsAbout, type WardCodes } from "./ward-names.ts";

/** What a door makes of files that were sent. */
export interface FilesRead {
  readonly items: AsyncIterable<IntakeItem>;
  /** What a person should know and what stops nothing; complete when the items are at their end. */
  readonly notices: readonly { readonly file: string | null; readonly detail: string }[];
  /** The header line of each file; null where there is none. */
  readonly headers: readonly (string | null)[];
}

/** Reads files by the rules of their import. */
export type ReadFiles = (files: readonly SentFile[], rules: ReadingRules) => FilesRead;

/** What work on imports needs. */
export interface ImportWork {
  readonly store: Store;
  readonly now: Instant;
  readonly readFiles: ReadFiles;
  /** Called after each step; work breaks off there when it throws. */
  readonly onStep?: () => void;
  /** What became of an import on which the work failed. When left out, it is thrown on. */
  readonly onError?: (importId: number, error: unknown) => void;
  /** Imports on which no more work is done. */
  readonly givenUp?: ReadonlySet<number>;
}

/**
 * Does the work that imports wait for: reads and tries the files that were sent, up to the decision of a person, and
 * stores what was decided. What another program is at work on is left to it. Returns how many imports it worked on.
 */
export async function workOnImports(work: ImportWork): Promise<number> {
  const { store } = work;
  const rows = await store.read((read) => importsIn(read, statesAtWork));
  let worked = 0;
  for (const row of rows.filter(({ id }) => !work.givenUp?.has(id))) {
    const claim = await store.claim(row.id);
    if (!claim) continue;
    try {
      if (await workOn(work, row.id, claim)) worked += 1;
    } catch (error) {
      if (!work.onError) throw error;
      work.onError(row.id, error);
    } finally {
      await claim.release();
    }
  }
  return worked;
}

/** The state is read anew under the claim: another program may have moved the import on since it was listed. */
async function workOn(work: ImportWork, importId: number, claim: Claim): Promise<boolean> {
  const { store } = work;
  const [row] = await store.read((read) => importsIn(read, statesAtWork, importId));
  if (!row) return false;
  if (row.state === "applying") {
    await finishImport(work, row, work.onStep);
    return true;
  }
  // Without files it is one of the command line, which is about to claim it.
  if (row.state !== "received" && !(await putBack(store, row))) return false;
  await readAndTry(work, row, claim);
  return true;
}

async function readAndTry(work: ImportWork, row: ImportRow, claim: Claim): Promise<void> {
  const { store, now, readFiles, onStep } = work;
  const { id: importId, facilityId } = row;
  const act = actOf({ store, now }, row);
  const { files, rules } = await store.read(async (read) => ({
    files: await filesToRead(read, importId),
    rules: await rulesOfImport(read, facilityId, importId),
  }));
  await store.tx((tx) => setImportState(tx, importId, "staging"));
  const { items, notices, headers } = readFiles(files, rules);
  const options = { dryRun: false, setAside: row.setAside, assumeInpatient: row.assumeInpatient };
  const watched = { ...options, ...(onStep ? { onProgress: onStep } : {}) };
  const { waiting } = await stageImport(act, items, watched, { importId, claim });
  const checked = await checkImport(act, { importId, total: waiting }, { ...watched, sourceId: row.sourceId });
  const { effects, wards, months } = checked;
  const questions = await store.read((read) => questionsAbout(read, facilityId, wards));
  const wardCodes: WardCodes = { questions, described: [...wards.described.keys()] };
  const told = notices.map(({ file, detail }) => ({ file, detail }));
  await store.tx(async (tx) => {
    await setImportState(tx, importId, "checked");
    await noteImport(tx, importId, {
      notices: JSON.stringify(told),
      effects: JSON.stringify({ ...effects, months: [...months].sort() }),
      wardCodes: JSON.stringify(wardCodes),
    });
    await forgetTexts(tx, importId, headers);
  });
}
