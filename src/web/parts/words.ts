import { type Day, day as dayText, type Month, month as monthText } from "../../../shared/day.ts";
import type { Sheet, SheetCell } from "../../../shared/sheet.ts";
import { figureText } from "../texts/figures.ts";

/** Makes a format when it is first needed: on a slow device all of them together take a fifth of a second. */
function atFirstUse<Format>(make: () => Format): () => Format {
  let made: Format | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

/** Days and months have no zone of their own: they are shown as they are written. */
const dateIn = (options: Intl.DateTimeFormatOptions): (() => Intl.DateTimeFormat) =>
  atFirstUse(() => new Intl.DateTimeFormat("en-US", { timeZone: "UTC", ...options }));
const numberWith = (options: Intl.NumberFormatOptions): (() => Intl.NumberFormat) =>
  atFirstUse(() => new Intl.NumberFormat("en-US", options));
const monthFormat = dateIn({ month: "long", year: "numeric" });
const dayFormat = dateIn({ weekday: "short", month: "short", day: "numeric" });
const longDayFormat = dateIn({ weekday: "long", month: "long", day: "numeric", year: "numeric" });
const wholeFormat = numberWith({ maximumFractionDigits: 0 });
const ratioFormat = numberWith({ minimumFractionDigits: 2, maximumFractionDigits: 2 });

/** `November 2026`. */
export function monthWords(month: Month): string {
  return monthFormat().format(new Date(`${month}-01`));
}

/** `Sun, Nov 1`, for a list in which the month is known. */
export function dayWords(day: Day): string {
  return dayFormat().format(new Date(day));
}

/** `Sunday, November 1, 2026`. */
export function longDayWords(day: Day): string {
  return longDayFormat().format(new Date(day));
}

/** `November 20, 2026, 10:00 (America/New_York)`: an instant on the clocks of the facility. */
export function instantWords(instant: string, zone: string): string {
  const options = { timeZone: zone, dateStyle: "long", timeStyle: "short", hourCycle: "h23" } as const;
  return `${new Intl.DateTimeFormat("en-US", options).format(new Date(instant))} (${zone})`;
}

/** The day that lies `steps` days later. */
export function dayAfter(day: Day, steps: number): Day {
  const date = new Date(day);
  date.setUTCDate(date.getUTCDate() + steps);
  return dayText.parse(date.toISOString().slice(0, 10));
}

/** The first and the last day of a month. */
export function daysOfMonth(month: Month): { first: Day; last: Day } {
  const last = new Date(`${month}-01`);
  last.setUTCMonth(last.getUTCMonth() + 1, 0);
  return { first: dayText.parse(`${month}-01`), last: dayText.parse(last.toISOString().slice(0, 10)) };
}

/** The month that lies `steps` months later, or null beyond the years that can be written. */
export function monthAfter(month: Month, steps: number): Month | null {
  const date = new Date(`${month}-01`);
  date.setUTCMonth(date.getUTCMonth() + steps);
  const read = monthText.safeParse(date.toISOString().slice(0, 7));
  return read.success ? read.data : null;
}

/** The cell of a row under the column of that key. Throws an Error when the sheet has no such column. */
export function cellOf(sheet: Sheet, row: readonly SheetCell[], key: string): SheetCell {
  const at = sheet.columns.findIndex((column) => column.key === key);
  const cell = row[at];
  if (cell === undefined) throw new Error(`The sheet ${sheet.id} has no column ${key}`);
  return cell;
}

/** A number with so many decimals: `1.212`. */
export function numberWords(value: number, decimals: number): string {
  const options = { minimumFractionDigits: decimals, maximumFractionDigits: decimals };
  return new Intl.NumberFormat("en-US", options).format(value);
}

/** A figure as it is shown: whole, or a ratio to two decimals. Null is missing, and is never shown as zero. */
export function figureWords(cell: SheetCell, kind: "whole" | "ratio"): string {
  if (cell === null) return figureText("missing");
  return typeof cell === "number" ? (kind === "ratio" ? ratioFormat : wholeFormat)().format(cell) : cell;
}
