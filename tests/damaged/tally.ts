import type { CorrectFolder } from "./correct-folder.ts";
import { type Damage, damageKinds } from "./damage.ts";
import { cell, type Folder, lineNumbers, minutesOf, type Row } from "./folder.ts";
import type { Imported, Item } from "./read-items.ts";
import { madeBy, type Trace } from "./traces.ts";
import { witnesses } from "./witnesses.ts";

/** What was found of the damages of one folder. */
export interface Tally {
  readonly seed: number;
  readonly lines: number;
  /** Each damage: what it was, and whether the folder can show it. */
  readonly damages: readonly { readonly name: string; readonly kind: string; readonly shownBy: string | null }[];
  /** Damages that the folder can show and that no item names. */
  readonly missed: readonly string[];
  /** Damages of which no line, count or unit of the folder tells, and which have an item all the same. */
  readonly more: number;
}

interface Given {
  readonly seed: number;
  readonly correct: CorrectFolder;
  readonly folder: Folder;
  readonly damages: readonly Damage[];
  readonly found: Imported;
}

const units = ["3E", "4N", "ICU-2"];

/** Judges each damage by the folder alone, and looks for its item. */
export function tallied({ seed, correct, folder, damages, found }: Given): Tally {
  const begin = minutesOf(`${correct.month}-01T00:00`);
  const judged = { units, begin, end: correct.readAt - 12 * 60, readAt: correct.readAt };
  const all = witnesses(folder, correct.folder, judged);
  const lines = lineNumbers(folder);
  const items = [...found.items, ...found.nextItems];
  const missed: string[] = [];
  const told = damages.map((damage) => {
    const shown = madeBy(damage, all);
    const traces = shown.flatMap((one) => one.traces);
    const isNamed = traces.some((trace) => items.some((item) => names(item, trace, lines)));
    const name = `${damage.kind} ${damage.before.file}${damage.column === null ? "" : ` ${damage.column}`}`;
    if (shown.length > 0 && !isNamed)
      missed.push(missedText({ seed, name, damage, why: shown.map((one) => one.name).join(", "), lines, found }));
    return { name, kind: damage.kind, shownBy: shown[0]?.name ?? null };
  });
  return { seed, lines: folder.length, damages: told, missed, more: 0 };
}

/** Whether an item names what a trace says. */
function names(item: Item, trace: Trace, lines: ReadonlyMap<Row, number>): boolean {
  if ("row" in trace) return item.lines.includes(`${trace.row.file} ${lines.get(trace.row)}`);
  if (item.kind !== trace.gap || (trace.unit !== null && item.unit !== trace.unit)) return false;
  return trace.day === undefined || item.days.includes(trace.day);
}

function missedText(given: {
  seed: number;
  name: string;
  damage: Damage;
  why: string;
  lines: ReadonlyMap<Row, number>;
  found: Imported;
}): string {
  const { seed, name, damage, why, lines, found } = given;
  const at = damage.after ? ` (line ${lines.get(damage.after)})` : "";
  const cells = (row: Row | null) =>
    row
      ? Object.keys(row.cells)
          .map((column) => cell(row, column))
          .join(",")
      : "-";
  const items = found.items.map(({ kind, unit, count, lines: places }) => `${kind} ${unit ?? ""} ${count} ${places}`);
  return `SEED=${seed} ${name}${at}: ${cells(damage.before)} became ${cells(damage.after)}; shown by: ${why}; items: ${items.join("; ")}`;
}

/** The numbers of many folders: how many damages of each kind the folders can show, and how many leave no trace. */
export function tallyText(tallies: readonly Tally[]): string {
  const all = tallies.flatMap(({ damages }) => damages);
  const missed = tallies.reduce((sum, one) => sum + one.missed.length, 0);
  const lines = tallies.reduce((sum, one) => sum + one.lines, 0);
  const share = (list: typeof all) => {
    const shown = list.filter(({ shownBy }) => shownBy !== null).length;
    return `${list.length} damaged, ${shown} can be shown, ${list.length - shown} leave no trace`;
  };
  const names = [...new Set(all.map(({ name }) => name))].sort();
  const reasons = [...new Set(all.flatMap(({ shownBy }) => shownBy ?? []))].sort();
  return [
    `${tallies.length} folders, ${lines} lines: ${share(all)}; ${missed} of those that can be shown have no item`,
    ...damageKinds.map((kind) => `  ${kind}: ${share(all.filter((one) => one.kind === kind))}`),
    ...names.map((name) => `    ${name}: ${share(all.filter((one) => one.name === name))}`),
    ...reasons.map((reason) => `  shown by ${reason}: ${all.filter(({ shownBy }) => shownBy === reason).length}`),
  ].join("\n");
}
