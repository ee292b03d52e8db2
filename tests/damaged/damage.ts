import type { Chance } from "../ledger/chance.ts";
import { cell, dayMinutes, type FileName, type Folder, minutesOf, type Row, timeText } from "./folder.ts";

/** What was done to a line of a correct folder. */
export const damageKinds = ["dropped", "delayed", "misspelled", "rejected"] as const;
export type DamageKind = (typeof damageKinds)[number];

/** A damaged line: as it was, and as the folder has it now; null: not at all. */
export interface Damage {
  readonly kind: DamageKind;
  readonly column: string | null;
  readonly before: Row;
  readonly after: Row | null;
}

/** Columns with a time or a day, which can come later than it was. */
const timed: Readonly<Record<FileName, readonly string[]>> = {
  "wards.csv": [],
  "stays.csv": ["admitted", "discharged"],
  "moves.csv": ["from", "to"],
  "catheters.csv": ["inserted", "removed"],
  "reviews.csv": ["day"],
  "specimens.csv": ["collected"],
  "signs.csv": ["day"],
  "daily-counts.csv": ["day"],
};

/** Columns with a word or a number that a hand can misspell. */
const spelled: Readonly<Record<FileName, readonly string[]>> = {
  "wards.csv": ["ward"],
  "stays.csv": ["stay", "patient"],
  "moves.csv": ["ward", "stay", "patient"],
  "catheters.csv": ["stay", "catheter", "kind"],
  "reviews.csv": ["stay", "catheter", "outcome"],
  "specimens.csv": ["stay", "kind", "organism"],
  "signs.csv": ["stay", "sign"],
  "daily-counts.csv": ["ward"],
};

/** Columns that no line may leave empty. */
export const neverEmpty: Readonly<Record<FileName, readonly string[]>> = {
  "wards.csv": ["ward"],
  "stays.csv": ["stay", "patient"],
  "moves.csv": ["stay", "patient", "ward", "from"],
  "catheters.csv": ["stay"],
  "reviews.csv": ["day", "outcome"],
  "specimens.csv": ["stay", "kind", "collected"],
  "signs.csv": ["stay", "day", "sign"],
  "daily-counts.csv": ["ward", "day", "patients", "catheters"],
};

/** Damages one line in twenty, at least one; gives the damaged folder and what was done. */
export function damaged(folder: Folder, chance: Chance): { folder: Folder; damages: Damage[] } {
  const chosen = new Set<number>();
  const wanted = Math.max(1, Math.round(folder.length / 20));
  while (chosen.size < wanted) chosen.add(chance.below(folder.length));
  const damages = new Map([...chosen].map((i) => [i, damageOf(folder[i] as Row, chance)]));
  const rows = folder.flatMap((row, i) => {
    const damage = damages.get(i);
    return damage ? (damage.after ?? []) : [row];
  });
  return { folder: rows, damages: [...damages.values()] };
}

function damageOf(row: Row, chance: Chance): Damage {
  const kind = chance.pick(damageKinds);
  if (kind === "dropped") return { kind, column: null, before: row, after: null };
  const change = { delayed, misspelled, rejected }[kind](row, chance);
  if (change === null) return { kind: "dropped", column: null, before: row, after: null };
  const [column, text] = change;
  return { kind, column, before: row, after: { ...row, cells: { ...row.cells, [column]: text } } };
}

type Change = readonly [column: string, text: string];

/** A time some hours or days later. */
function delayed(row: Row, chance: Chance): Change | null {
  const column = chance.maybe(timed[row.file].filter((name) => cell(row, name) !== ""));
  if (column === undefined) return null;
  const text = cell(row, column);
  if (text.length === 10) {
    return [column, timeText(minutesOf(`${text}T00:00`) + dayMinutes * (1 + chance.below(5))).slice(0, 10)];
  }
  // Never a whole hour, so that no two lines about one thing come to one time.
  const later = chance.percent(50) ? 60 * chance.below(12) : dayMinutes * (1 + chance.below(4));
  return [column, timeText(minutesOf(text) + later + 5)];
}

function misspelled(row: Row, chance: Chance): Change {
  const column = chance.pick(spelled[row.file]);
  const text = cell(row, column);
  const signs = [...text];
  const i = chance.below(signs.length);
  const edits = [
    signs.toSpliced(i, 1),
    signs.toSpliced(i, 0, signs[i] as string),
    signs.toSpliced(i, 1, chance.pick(["7", "X", "q"])),
    signs.toSpliced(i, 2, ...signs.slice(i, i + 2).reverse()),
  ].map((edited) => edited.join("").trim());
  const others = edits.filter((edited) => edited !== "" && edited.toLowerCase() !== text.toLowerCase());
  return [column, chance.pick(others)];
}

/** A time that cannot be read, an empty cell that must not be, or an end before its beginning. */
function rejected(row: Row, chance: Chance): Change {
  const [first, last] = timed[row.file];
  const times = timed[row.file].filter((name) => cell(row, name) !== "");
  const ways: Change[] = [
    [chance.pick(neverEmpty[row.file]), ""],
    ...times.map((name): Change => [name, chance.pick(["someday", "2025-02-30T08:00", "13/01/2025"])]),
  ];
  if (last !== undefined && times.length === 2)
    ways.push([last, timeText(minutesOf(cell(row, first as string)) - 60 * (1 + chance.below(40)))]);
  return chance.pick(ways);
}
