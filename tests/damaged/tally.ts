import type { CorrectFolder } from "./correct-folder.ts";
import { type Damage, damageKinds } from "./damage.ts";
import { cell, type FileName, type Folder, lineNumbers, minutesOf, type Row, rowsOf } from "./folder.ts";
import type { Imported, Item } from "./read-items.ts";
import { type Contradiction, madeBy, type Trace } from "./traces.ts";
import { witnesses } from "./witnesses.ts";

/** What was found of the damages of one folder. */
export interface Tally {
  readonly seed: number;
  readonly lines: number;
  /** Each damage: what it was, and whether the folder can show it. */
  readonly damages: readonly { readonly name: string; readonly kind: string; readonly shownBy: string | null }[];
  /** Damages that the folder can show and that no item names. */
  readonly missed: readonly string[];
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
  const items = [...found.items, ...found.otherItems];
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
  missed.push(...tooFew(all, items).map((text) => `SEED=${seed} ${text}`));
  return { seed, lines: folder.length, damages: told, missed };
}

const rejectedItems: Readonly<Record<FileName, string>> = {
  "wards.csv": "rejected-wards",
  "stays.csv": "rejected-stays",
  "moves.csv": "rejected-moves",
  "catheters.csv": "rejected-catheters",
  "reviews.csv": "rejected-reviews",
  "specimens.csv": "rejected-specimens",
  "signs.csv": "rejected-signs",
  "daily-counts.csv": "rejected-counts",
};

/** Items that count fewer lines of a file than cannot be read, or fewer days of a unit than were not counted by hand. */
function tooFew(all: readonly Contradiction[], items: readonly Item[]): string[] {
  const unreadable = all.filter(({ name }) => name === "cannot be read").flatMap(({ rows }) => rows);
  const countOf = (kind: string, unit: string | null) =>
    items.filter((item) => item.kind === kind && item.unit === unit).reduce((sum, { count }) => sum + count, 0);
  const files = (Object.keys(rejectedItems) as FileName[]).flatMap((file) => {
    const expected = rowsOf(unreadable, file).length;
    const counted = countOf(rejectedItems[file], null);
    return counted < expected ? [`${rejectedItems[file]} counts ${counted} of ${expected} lines`] : [];
  });
  const missing = all.flatMap(({ traces }) =>
    traces.flatMap((trace) => ("gap" in trace && trace.gap === "manual-count-missing" ? [trace.unit] : [])),
  );
  const days = [...new Set(missing)].flatMap((unit) => {
    const expected = missing.filter((one) => one === unit).length;
    const counted = countOf("manual-count-missing", unit);
    return counted < expected ? [`manual-count-missing of ${unit} counts ${counted} of ${expected} days`] : [];
  });
  return [...files, ...days];
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
