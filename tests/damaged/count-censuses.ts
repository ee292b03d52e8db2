import { cell, dayMinutes, type Folder, minutesOf, type Row, rowsOf, timeText } from "./folder.ts";

/** Who was on a unit at a census: the stays, and those of them with an indwelling catheter. */
export interface Present {
  readonly patients: ReadonlySet<string>;
  readonly catheters: ReadonlySet<string>;
}

/** The days of a month, in minutes since 1970; the end is not a part of it. */
export interface Span {
  readonly units: readonly string[];
  readonly begin: number;
  readonly end: number;
}

/**
 * Who was on each unit at midnight, as the lines say it, by `unit YYYY-MM-DD`. Present are those who came at or before
 * the census and left after it; a bed is held while a patient is at a procedure.
 * Source: CDC Patient Safety Component Manual, chapter 7: one count at the same time each day (from memory).
 */
export function presentAt(folder: Folder, { units, begin, end }: Span): Map<string, Present> {
  const moves = rowsOf(folder, "moves.csv").map((row) => ({ row, ...heldSpan(folder, row) }));
  const catheters = rowsOf(folder, "catheters.csv").map((row) => ({ row, ...spanOf(row, "inserted", "removed") }));
  const found = new Map<string, Present>();
  for (let at = begin; at < end; at += dayMinutes) {
    const inPlace = new Set(catheters.filter((one) => holds(one, at)).map(({ row }) => cell(row, "stay")));
    const there = moves.filter((one) => holds(one, at)).map(({ row }) => row);
    for (const unit of units) {
      const patients = new Set(there.filter((row) => cell(row, "ward") === unit).map((row) => cell(row, "stay")));
      const withCatheter = new Set([...patients].filter((stay) => inPlace.has(stay)));
      found.set(`${unit} ${timeText(at).slice(0, 10)}`, { patients, catheters: withCatheter });
    }
  }
  return found;
}

/** The lines of daily-counts.csv that a person would write who counts what the other lines say. */
export function countedByHand(folder: Folder, span: Span): Row[] {
  return [...presentAt(folder, span)].map(([place, { patients, catheters }]): Row => {
    const [ward = "", day = ""] = place.split(" ");
    const counts = { patients: String(patients.size), catheters: String(catheters.size) };
    return { file: "daily-counts.csv", cells: { ward, day, ...counts } };
  });
}

/** From when to when a line lasts; without an end it lasts on. */
export function spanOf(row: Row, first: string, last: string): { from: number; to: number } {
  const to = cell(row, last);
  return { from: minutesOf(cell(row, first)), to: to === "" ? Number.POSITIVE_INFINITY : minutesOf(to) };
}

/** How long a move holds its bed: during a procedure up to the next move, or else the discharge. */
function heldSpan(folder: Folder, move: Row): { from: number; to: number } {
  const own = spanOf(move, "from", "to");
  if (cell(move, "absence") === "") return own;
  const ofStay = folder.filter((row) => cell(row, "stay") === cell(move, "stay"));
  const later = rowsOf(ofStay, "moves.csv").map((row) => spanOf(row, "from", "to").from);
  const next = Math.min(...later.filter((from) => from > own.from));
  const [stay] = rowsOf(ofStay, "stays.csv");
  const end = Number.isFinite(next) ? next : stay ? spanOf(stay, "admitted", "discharged").to : own.to;
  return { from: own.from, to: Math.max(own.to, end) };
}

function holds({ from, to }: { from: number; to: number }, at: number): boolean {
  return from <= at && to > at;
}
