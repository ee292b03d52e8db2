import type { DayNumber, Instant } from "../days/day-number.ts";
import type { Zone } from "../days/zone.ts";
import type { IntakeFile } from "./intake-line.ts";
import type { LineMark } from "./outcome.ts";

/**
 * What a line names, as far as it can be read: by it the months are found in which the line is missing when it is not
 * stored. Days are facility days.
 */
export interface LineAbout {
  readonly stay: string | null;
  readonly catheter: string | null;
  /** Codes of wards as the file has them. */
  readonly wards: readonly string[];
  readonly first: DayNumber | null;
  readonly last: DayNumber | null;
}

/**
 * A culture or sign can be of an event up to three days before it: the infection window reaches three days.
 * Source: CDC Patient Safety Component Manual, chapter 2 (from memory).
 */
const daysBeforeCulture = 3;

type Values = Readonly<Record<string, unknown>>;

/** The columns that begin and end what a line tells of, in the order in which they are looked at. */
const spans: Readonly<Record<IntakeFile, { readonly first: readonly string[]; readonly last: readonly string[] }>> = {
  "wards.csv": { first: [], last: [] },
  "stays.csv": { first: ["admitted"], last: ["discharged"] },
  "moves.csv": { first: ["from"], last: ["to"] },
  "catheters.csv": { first: ["inserted"], last: ["removed"] },
  "reviews.csv": { first: ["day"], last: ["day"] },
  "specimens.csv": { first: ["collected"], last: ["collected"] },
  "signs.csv": { first: ["day"], last: ["last_day", "day"] },
  "daily-counts.csv": { first: ["day"], last: ["day"] },
};

/** Every file that is read. */
export const intakeFiles = Object.keys(spans) as IntakeFile[];

/** Columns that hold a day and no instant. */
const dayColumns: Readonly<Partial<Record<IntakeFile, boolean>>> = { "signs.csv": true, "daily-counts.csv": true };

/** What a line of a file names, from those of its values that could be read; the others are left out or null. */
export function lineAbout(file: IntakeFile, values: Values, zone: Zone): LineAbout {
  const dayOf = (column: string): DayNumber | null => {
    const value = values[column];
    if (typeof value !== "number") return null;
    return dayColumns[file] ? value : zone.dayOf(value satisfies Instant);
  };
  const [first = null, last = null] = (["first", "last"] as const).map(
    (end) => spans[file][end].map(dayOf).find((day) => day !== null) ?? null,
  );
  const isOfCulture = file === "specimens.csv" || file === "signs.csv";
  const text = (column: string): string | null => (typeof values[column] === "string" ? values[column] : null);
  const ward = text("ward");
  return {
    ...{ stay: text("stay"), catheter: text("catheter"), wards: ward === null ? [] : [ward] },
    first: first !== null && isOfCulture ? first - daysBeforeCulture : first,
    last,
  };
}

/** Days from the first to the last, both included. */
export interface Days {
  readonly first: DayNumber;
  readonly last: DayNumber;
}

/** A stay as far as it is known: its days, with no last one while it lasts, and the wards of the patient in it. */
export interface KnownStay {
  readonly first: DayNumber;
  readonly last: DayNumber | null;
  readonly wards: readonly { readonly code: string; readonly first: DayNumber; readonly last: DayNumber | null }[];
}

/**
 * The days that a line touches; `isOpen`: no end is known, so later days are touched too, as they come. `own`: the days
 * that the line itself says, by which its wards are found: of days that may be mistyped no ward can be told.
 */
export interface TouchedDays extends Days {
  readonly isOpen: boolean;
  readonly own: Days;
}

/**
 * The days that a line touches: its own, completed by those of the stay that it names. Days that are out of order, or
 * outside that stay, may be mistyped: then all days between them and all days of the stay are touched. `latest` is the
 * last day that an end which is not known can have. Null when neither names a day.
 */
export function daysTouched(
  { first, last }: Pick<LineAbout, "first" | "last">,
  stay: KnownStay | null,
  latest: DayNumber,
): TouchedDays | null {
  // An end before its stay is no end of something that began with the stay.
  const begins = stay === null || (last !== null && last < stay.first) ? null : stay.first;
  const from = first ?? begins ?? last;
  if (from === null) return null;
  const end = last ?? stay?.last ?? null;
  const to = end ?? Math.max(from, latest);
  const own = { first: Math.min(from, to), last: Math.max(from, to) };
  if (stay === null || isWithin(own, stay, latest)) return { ...own, isOpen: end === null, own };
  return {
    first: Math.min(own.first, stay.first),
    last: Math.max(own.last, stay.last ?? latest),
    isOpen: end === null || stay.last === null,
    own,
  };
}

/** Whether days are of a stay. A culture on its first day reaches the days before it. */
function isWithin(days: Days, stay: KnownStay, latest: DayNumber): boolean {
  const end = Math.max(stay.last ?? latest, stay.first);
  return days.first >= stay.first - daysBeforeCulture && days.last >= stay.first && days.last <= end;
}

/**
 * The wards that a line touches on some days: those it names, or else those of its stay; null when neither is known. A
 * catheter that was in place before its stay, and out on its first day, is of no ward that can be told.
 */
export function wardsTouched(
  { wards }: Pick<LineAbout, "wards">,
  stay: KnownStay | null,
  days: Days,
  file?: string,
): string[] | null {
  if (wards.length > 0) return [...wards];
  const isBefore = stay !== null && days.first < stay.first && days.last <= stay.first;
  if (isBefore && file === "catheters.csv") return null;
  const onDays = (stay?.wards ?? []).filter(
    ({ first, last }) => first <= days.last && (last === null || last >= days.first),
  );
  return onDays.length === 0 ? null : [...new Set(onDays.map(({ code }) => code))].sort();
}

/** What rejected lines of stays and moves say of the stays that were not stored because of them, by the stay's number. */
export function staysOfLines(
  lines: readonly { readonly file: string; readonly about: LineAbout }[],
): Map<string, KnownStay> {
  const stays = new Map<string, KnownStay>();
  for (const { file, about } of lines) {
    if ((file !== "stays.csv" && file !== "moves.csv") || about.stay === null) continue;
    const days = [about.first, about.last].filter((day) => day !== null);
    if (days.length === 0) continue;
    const start = Math.min(...days);
    const last = about.last === null ? null : Math.max(...days);
    const known = stays.get(about.stay);
    const end = last === null || known?.last === null ? null : Math.max(last, known?.last ?? last);
    stays.set(about.stay, {
      first: Math.min(start, known?.first ?? start),
      last: end,
      wards: [...(known?.wards ?? []), ...about.wards.map((code) => ({ code, first: start, last }))],
    });
  }
  return stays;
}

/** The days from the earliest to the latest that lines name; null when they name none. */
export function daysNamed(list: readonly Pick<LineAbout, "first" | "last">[]): Days | null {
  const days = list.flatMap(({ first, last }) => [first, last]).filter((day) => day !== null);
  if (days.length === 0) return null;
  return days.reduce<Days>(({ first, last }, day) => ({ first: Math.min(first, day), last: Math.max(last, day) }), {
    first: Number.POSITIVE_INFINITY,
    last: Number.NEGATIVE_INFINITY,
  });
}

/** Marks that tell a fact and leave nothing open: a month with such lines alone is complete. */
const certainMarks: readonly LineMark[] = ["in-place-on-arrival", "absence-known"];

/** Files of which definitions ask the day alone: where an hour decides all the same, the case asks for it. */
const filesOfDays: readonly IntakeFile[] = ["specimens.csv", "signs.csv"];

/** Whether marks leave something open that a reader of the month should know. */
export function isDoubtful(file: string, marks: readonly LineMark[]): boolean {
  const isOpen = (mark: LineMark) => mark !== "no-hour" || !filesOfDays.some((one) => one === file);
  return marks.some((mark) => !certainMarks.includes(mark) && isOpen(mark));
}
