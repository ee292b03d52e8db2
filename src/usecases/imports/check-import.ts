import type { Month } from "../../../shared/day.ts";
import { Problem } from "../../../shared/problems.ts";
import type { DayNumber } from "../../domain/days/day-number.ts";
import type { Zone } from "../../domain/days/zone.ts";
import { addEffects, effectsOf, type ImportEffects, noEffects, withNewWards } from "../../domain/intake/effects.ts";
import type { IntakeLine, LineOf } from "../../domain/intake/intake-line.ts";
import { lineAbout } from "../../domain/intake/line-about.ts";
import { monthsTouched } from "../../domain/intake/months-touched.ts";
import type { LineFault, Outcome } from "../../domain/intake/outcome.ts";
import { type LineOutcome, settleLines } from "../../store/import-lines.ts";
import { setImportState, setProgress } from "../../store/imports.ts";
import type { Read } from "../../store/store.ts";
import { wards } from "../../store/wards.ts";
import type { Act } from "../act.ts";
import { checkDailyCount } from "../months/record-daily-count.ts";
import { careRules } from "./care-rules.ts";
import { refuseFutureLines } from "./future-lines.ts";
import type { ImportOptions } from "./intake-item.ts";
import { planGroups } from "./plan-group.ts";
import { nextChunk, type WaitingChunk, wardsNamed } from "./read-waiting.ts";
import { type NewWards, wardNames } from "./ward-names.ts";

/** What trying an import found. */
interface CheckedImport {
  readonly refused: number;
  readonly effects: ImportEffects;
  readonly wards: NewWards;
  /** The months of which lines would change or add entries. */
  readonly months: ReadonlySet<Month>;
}

/**
 * Tries every waiting line against what is recorded and against the lines before it, and writes down which are refused.
 * Nothing of the record changes. Returns how many lines were refused, and what storing the others would change.
 */
export async function checkImport(
  act: Act,
  { importId, total }: { importId: number; total: number },
  options: Omit<Partial<ImportOptions>, "sourceId"> & Parameters<typeof wardNames>[2],
): Promise<CheckedImport> {
  await act.store.tx(async (tx) => {
    await setImportState(tx, importId, "checking");
    await setProgress(tx, importId, { done: 0, total });
  });
  let refused = 0;
  let done = 0;
  let after = "";
  let effects = noEffects;
  const codes = new Set<string>();
  const months = new Set<Month>();
  const described = new Map<string, string>();
  options.onProgress?.({ phase: "checking", done, total });
  for (;;) {
    const found = await act.store.read(async (read) => {
      const wardOf = await wardNames(read, act.actor.facilityId, options);
      const chunk = await nextChunk(read, importId, { after, wardOf });
      return chunk && { chunk, ...(await tried(read, act, chunk)) };
    });
    if (!found) return { refused, effects: withNewWards(effects, codes), wards: { codes, described }, months };
    done += found.chunk.lineCount;
    await act.store.tx(async (tx) => {
      await settleLines(tx, importId, found.refused);
      await setProgress(tx, importId, { done, total });
    });
    after = found.chunk.lastKey;
    refused += found.refused.length;
    effects = addEffects(effects, found.effects);
    for (const code of found.newWards) codes.add(code);
    for (const month of found.months) months.add(month);
    for (const { values } of found.chunk.wards) described.set(values.ward, values.name ?? values.ward);
    options.onProgress?.({ phase: "checking", done, total });
    await yieldToOthers();
  }
}

/** Lets requests that came meanwhile be answered. */
export function yieldToOthers(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}

async function tried(
  read: Read,
  act: Act,
  chunk: WaitingChunk,
): Promise<{ refused: LineOutcome[]; effects: ImportEffects; newWards: string[]; months: Month[] }> {
  const { facilityId } = act.actor;
  const known = new Map((await wards(read, facilityId)).map((ward) => [ward.code, ward.id]));
  // What is only tried gets ids that no entry has.
  let next = 0;
  const newId = () => --next;
  const wardIds = new Map(wardsNamed(chunk).map((code) => [code, known.get(code) ?? newId()]));
  const care = await careRules(read, act);
  const { groups, outcomes: future } = refuseFutureLines(chunk.patients, act.now, care.zone);
  const { outcomes, ...planned } = await planGroups(read, facilityId, groups, { wardIds, newId, care });
  const today = care.zone.dayOf(act.now);
  const counts = chunk.counts.map((line) => [line, countOutcome(line, today)] as const);
  const refused = [...future, ...outcomes, ...counts].filter(([, outcome]) => outcome.state === "refused");
  return {
    refused: refused.map(([line, outcome]) => settledAs(line, outcome, care.zone)),
    effects: effectsOf(planned),
    months: monthsTouched(planned, { dayOf: (at) => care.zone.dayOf(at), today }),
    newWards: [...wardsNamed(chunk), ...chunk.wards.map((line) => line.values.ward)].filter((code) => !known.has(code)),
  };
}

/** What became of a line, with what the line names. */
export function settledAs(line: IntakeLine, outcome: Outcome, zone: Zone): LineOutcome {
  return { file: line.file, line: line.line, raw: line.raw, about: lineAbout(line.file, line.values, zone), outcome };
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
