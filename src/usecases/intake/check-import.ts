import { Problem } from "../../../shared/problems.ts";
import type { DayNumber } from "../../domain/days/day-number.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import type { LineOf } from "../../domain/intake/intake-line.ts";
import type { LineFault, Outcome } from "../../domain/intake/outcome.ts";
import { facility } from "../../store/facilities.ts";
import { type LineOutcome, settleLines } from "../../store/import-lines.ts";
import { setImportState } from "../../store/imports.ts";
import type { Read } from "../../store/store.ts";
import { wards } from "../../store/wards.ts";
import type { Act } from "../act.ts";
import { checkDailyCount } from "../record-daily-count.ts";
import { refuseFutureLines } from "./future-lines.ts";
import type { ImportOptions } from "./intake-item.ts";
import { planGroups } from "./plan-group.ts";
import { nextChunk, type WaitingChunk, wardsNamed } from "./read-waiting.ts";

/**
 * Tries every waiting line against what is recorded and against the lines before it, and writes down which are refused.
 * Nothing of the record changes. Returns how many lines were refused.
 */
export async function checkImport(
  act: Act,
  { importId, total }: { importId: number; total: number },
  options: ImportOptions,
): Promise<number> {
  await act.store.tx((tx) => setImportState(tx, importId, "checking"));
  let refused = 0;
  let done = 0;
  let after = "";
  options.onProgress?.({ phase: "checking", done, total });
  for (;;) {
    const found = await act.store.read(async (read) => {
      const chunk = await nextChunk(read, importId, after);
      return chunk && { chunk, refused: await refusedOf(read, act, chunk) };
    });
    if (!found) return refused;
    if (found.refused.length > 0) await act.store.tx((tx) => settleLines(tx, importId, found.refused));
    after = found.chunk.lastKey;
    refused += found.refused.length;
    done += found.chunk.lineCount;
    options.onProgress?.({ phase: "checking", done, total });
    await yieldToOthers();
  }
}

/** Lets requests that came meanwhile be answered. */
export function yieldToOthers(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}

async function refusedOf(read: Read, act: Act, chunk: WaitingChunk): Promise<LineOutcome[]> {
  const { facilityId } = act.actor;
  const known = new Map((await wards(read, facilityId)).map((ward) => [ward.code, ward.id]));
  // What is only tried gets ids that no entry has.
  let next = 0;
  const newId = () => --next;
  const wardIds = new Map(wardsNamed(chunk).map((code) => [code, known.get(code) ?? newId()]));
  const { groups, outcomes: future } = refuseFutureLines(chunk.patients, act.now);
  const { outcomes } = await planGroups(read, facilityId, groups, { wardIds, newId });
  const { zone } = await facility(read, facilityId);
  const today = zoneNamed(zone).dayOf(act.now);
  return [...future, ...outcomes, ...chunk.counts.map((line) => [line, countOutcome(line, today)] as const)]
    .filter(([, outcome]) => outcome.state === "refused")
    .map(([line, outcome]) => ({ file: line.file, line: line.line, outcome }));
}

/** What becomes of a count made by hand. */
export function countOutcome(line: LineOf<"daily-counts.csv">, today: DayNumber): Outcome {
  try {
    checkDailyCount(line.values, today);
    return { state: "accepted" };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    const faults = error.faults.map(
      ({ code, pointer, detail }): LineFault => ({ code, column: pointer.slice(1), detail }),
    );
    return { state: "refused", faults };
  }
}
