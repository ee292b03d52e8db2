import type { ImportState } from "../../../shared/import-words.ts";
import { writeAudit } from "../../store/audit.ts";
import { countLines, dropWaiting, forgetUnchanged } from "../../store/import-lines.ts";
import { importOf, setImportState } from "../../store/imports.ts";
import { countByFile } from "../../store/set-aside-lines.ts";
import { signedOf } from "../../store/signed-month-changes.ts";
import type { Tx } from "../../store/store.ts";
import { type Act, recording } from "../act.ts";
import { applyImport } from "./apply-import.ts";
import { checkImport } from "./check-import.ts";
import type { FileRows, ImportOptions, ImportResult, IntakeItem } from "./intake-item.ts";
import { type Staged, stageImport } from "./stage-import.ts";
import { keepAnswers, questionsAbout } from "./ward-names.ts";

/**
 * Reads, tries and stores lines of files. A line is accepted, accepted and marked, unchanged (seen before), or refused;
 * with a refused line nothing is stored, unless `setAside` keeps the refused ones apart. A file that breaks off stops
 * everything. Killed at any point, either nothing counts or the next start finishes it.
 */
export async function importLines(
  act: Act,
  items: AsyncIterable<IntakeItem>,
  options: ImportOptions,
): Promise<ImportResult> {
  const staged = await stageImport(act, items, options);
  try {
    return await decide(act, staged, options);
  } finally {
    await staged.claim.release();
  }
}

async function decide(act: Act, staged: Staged, options: ImportOptions): Promise<ImportResult> {
  const { importId, waiting, brokenOff, total } = staged;
  const { answers = [], ask } = options.wards ?? {};
  const { facilityId } = act.actor;
  const sourceId = (await act.store.read((read) => importOf(read, facilityId, importId)))?.sourceId ?? null;
  const checked = await checkImport(act, { importId, total: waiting }, { ...options, sourceId, answers });
  const { questions, refused } = await act.store.read(async (read) => ({
    questions: ask ? await questionsAbout(read, facilityId, checked.wards, answers) : [],
    refused: (await countLines(read, importId)).refused ?? 0,
  }));
  const isOpen = questions.length > 0 && ask?.(questions) === true;
  const stop = brokenOff || (refused > 0 && !options.setAside) || isOpen;
  if (options.dryRun) {
    const signedMonths = await act.store.read((read) => signedOf(read, facilityId, [...checked.months]));
    return { ...(await endImport(act, importId, "dry-run")), signedMonths };
  }
  if (stop) return endImport(act, importId, "refused");
  if (sourceId !== null) {
    const described = [...checked.wards.described.keys()];
    await act.store.tx((tx) => keepAnswers(tx, act, { sourceId, answers, described }));
  }
  await applyImport(act, { importId, total: waiting - checked.refused }, options);
  const result = await endImport(act, importId, "applied");
  const settled = result.accepted + result.marked + result.unchanged + result.refused + result.blank;
  if (settled !== total) throw new Error(`import ${importId} read ${total} lines and settled ${settled}`);
  return result;
}

/** Writes down how an import ended, with its audit entry. */
export function endImport(act: Act, importId: number, state: ImportState): Promise<ImportResult> {
  return act.store.tx((tx) => endImportIn(tx, act, importId, state));
}

/** {@link endImport} in a transaction that is open. */
export async function endImportIn(tx: Tx, act: Act, importId: number, state: ImportState): Promise<ImportResult> {
  const result = await resultOf(tx, importId, state);
  const { files: _, ...counts } = result;
  if (state === "applied") await forgetUnchanged(tx, importId);
  else await dropWaiting(tx, importId);
  await setImportState(tx, importId, state, { summary: counts, finishedAt: act.now });
  await writeAudit(tx, recording(act), { action: "import", details: counts });
  return result;
}

/** A dry run and a refused folder tell what would have been accepted. */
async function resultOf(tx: Tx, importId: number, state: ImportState): Promise<ImportResult> {
  const {
    accepted = 0,
    marked = 0,
    unchanged = 0,
    refused = 0,
    staged = 0,
    blank = 0,
  } = await countLines(tx, importId);
  const files = await fileRows(tx, importId);
  return { importId, state, accepted: accepted + staged, marked, unchanged, refused, blank, files };
}

/** The rows of each file; what is stored, marked or known already was accepted. A whole file is no row. */
async function fileRows(tx: Tx, importId: number): Promise<FileRows[]> {
  const files = new Map<string, FileRows>();
  for (const { file, state, count } of await countByFile(tx, importId)) {
    const rows = files.get(file) ?? { file, accepted: 0, rejected: 0, blank: 0 };
    const column = state === "refused" ? "rejected" : state === "blank" ? "blank" : "accepted";
    files.set(file, { ...rows, [column]: rows[column] + count });
  }
  return [...files.values()];
}
