import { presentAt, spanOf } from "./count-censuses.ts";
import { neverEmpty } from "./damage.ts";
import { cell, type Folder, minutesOf, type Row, rowsOf } from "./folder.ts";
import { stayWitnesses } from "./stay-witnesses.ts";
import { between, type Contradiction } from "./traces.ts";

/** A month whose folder is judged: its units, its days, and when it was read, in minutes since 1970. */
export interface Judged {
  readonly units: readonly string[];
  readonly begin: number;
  readonly end: number;
  readonly readAt: number;
}

/**
 * Everything that a folder says against itself. It knows the files from their description alone and nothing of what the
 * product makes of them.
 */
export function witnesses(folder: Folder, judged: Judged): Contradiction[] {
  const unreadable = folder.filter((row) => !isReadable(row, judged.readAt));
  const readable = folder.filter((row) => !unreadable.includes(row));
  return [
    ...unreadable.map((row) => between("cannot be read", [row])),
    ...unknownNames(readable),
    ...unknownUnits(folder, readable),
    ...stayWitnesses(readable, judged),
    ...countedTwice(readable),
    ...notCounted(folder, judged),
    ...countedOtherwise(readable, judged),
  ];
}

const days: Readonly<Record<string, readonly string[]>> = { "signs.csv": ["day"], "daily-counts.csv": ["day"] };
const times = ["admitted", "discharged", "from", "to", "inserted", "removed", "day", "collected"];
const ordered = [
  ["admitted", "discharged"],
  ["from", "to"],
  ["inserted", "removed"],
] as const;
/** The words of each closed column that a correct folder uses. */
const words: Readonly<Record<string, readonly string[]>> = {
  "catheters.csv kind": ["indwelling-urethral"],
  "specimens.csv kind": ["urine"],
  "reviews.csv outcome": ["keep"],
  "signs.csv sign": ["temperature", "dysuria"],
};

/** Whether a line can be true by itself: nothing is missing, every time and word can be read, no end before a beginning. */
function isReadable(row: Row, readAt: number): boolean {
  const isDay = (column: string) => days[row.file]?.includes(column) ?? false;
  const instants = times.filter((column) => cell(row, column) !== "");
  const timeOf = (column: string) => {
    const text = cell(row, column);
    const real = isDay(column) ? `${text}T00:00` : text;
    const minutes = minutesOf(real);
    // A date that no calendar has is read as another one by the platform.
    return Number.isNaN(minutes) || new Date(minutes * 60_000).toISOString().slice(0, 16) !== real ? null : minutes;
  };
  if (neverEmpty[row.file].some((column) => cell(row, column) === "")) return false;
  if (instants.some((column) => (timeOf(column) ?? Number.POSITIVE_INFINITY) > readAt)) return false;
  const isWord = ([key, list]: [string, readonly string[]]) => {
    const [file, column = ""] = key.split(" ");
    return file !== row.file || list.includes(cell(row, column).toLowerCase());
  };
  if (!Object.entries(words).every(isWord)) return false;
  return ordered.every(([first, last]) => {
    if (cell(row, first) === "" || cell(row, last) === "") return true;
    return (timeOf(first) ?? 0) <= (timeOf(last) ?? 0);
  });
}

/** Names of organisms that a correct folder uses: any other waits for a person. */
const organisms = ["no growth", "escherichia coli", "klebsiella pneumoniae", "enterococcus faecalis"];

function unknownNames(folder: Folder): Contradiction[] {
  const named = rowsOf(folder, "specimens.csv");
  return named
    .filter((row) => !organisms.includes(cell(row, "organism").toLowerCase().replace(/\s+/g, " ")))
    .map((row) => between("unknown organism", [row]));
}

/** Units that moves or counts name and no line describes. */
function unknownUnits(folder: Folder, readable: Folder): Contradiction[] {
  const described = new Set(rowsOf(folder, "wards.csv").map((row) => cell(row, "ward")));
  const naming = [...rowsOf(readable, "moves.csv"), ...rowsOf(readable, "daily-counts.csv")];
  const unknown = new Set(naming.map((row) => cell(row, "ward")).filter((unit) => !described.has(unit)));
  return [...unknown].map((unit): Contradiction => {
    return {
      name: "unit without description",
      rows: naming.filter((row) => cell(row, "ward") === unit),
      missing: (row) => row.file === "wards.csv" && cell(row, "ward") === unit,
      traces: [{ gap: "setting-missing", unit }],
    };
  });
}

function unitDay(row: Row): string {
  return `${cell(row, "ward")} ${cell(row, "day")}`;
}

/** Units and units' days of which two lines say two things. */
function countedTwice(folder: Folder): Contradiction[] {
  const counts = rowsOf(folder, "daily-counts.csv");
  const wards = rowsOf(folder, "wards.csv");
  const said = (row: Row) => JSON.stringify(row.cells);
  const pairs = (rows: readonly Row[], key: (row: Row) => string, name: string) =>
    rows.flatMap((row, i) =>
      rows
        .slice(0, i)
        .filter((other) => key(other) === key(row) && said(other) !== said(row))
        .map((other) => between(name, [other, row])),
    );
  return [
    ...pairs(counts, unitDay, "a day counted twice"),
    ...pairs(wards, (row) => cell(row, "ward"), "a unit described twice"),
  ];
}

/** Days of a unit without a count, where the unit has counts. */
function notCounted(folder: Folder, { units, begin, end }: Judged): Contradiction[] {
  const counts = rowsOf(folder, "daily-counts.csv");
  const has = new Set(counts.map(unitDay));
  const all = [...presentAt([], { units, begin, end }).keys()];
  return all
    .filter((place) => !has.has(place))
    .map((place): Contradiction => {
      const [unit = ""] = place.split(" ");
      const missing = (row: Row) => row.file === "daily-counts.csv" && unitDay(row) === place;
      const gap = isDescribed(folder, unit) ? "manual-count-missing" : "setting-missing";
      return { name: "a day not counted by hand", rows: [], missing, traces: [{ gap, unit }] };
    });
}

/** Days on which the lines give another number than was counted by hand. */
function countedOtherwise(folder: Folder, judged: Judged): Contradiction[] {
  const found = presentAt(folder, judged);
  return rowsOf(folder, "daily-counts.csv").flatMap((count): Contradiction[] => {
    const present = found.get(unitDay(count));
    if (!present) return [];
    const agrees = (column: "patients" | "catheters") => String(present[column].size) === cell(count, column);
    if (agrees("patients") && agrees("catheters")) return [];
    const unit = cell(count, "ward");
    const at = minutesOf(`${cell(count, "day")}T00:00`);
    const changed = (before: Row, after: Row | null) =>
      isAt(before, unit, at) !== (after !== null && isAt(after, unit, at));
    const gap = isDescribed(folder, unit) ? "manual-count-differs" : "setting-missing";
    const day = gap === "setting-missing" ? undefined : cell(count, "day");
    const traces = [{ gap, unit, day } as const];
    return [{ name: "counted otherwise by hand", rows: [], missing: () => false, changed, traces }];
  });
}

/** Whether a line puts a patient on the unit at that time, or a catheter into a patient. */
function isAt(row: Row, unit: string, at: number): boolean {
  const [first, last] = row.file === "moves.csv" ? ["from", "to"] : ["inserted", "removed"];
  if (row.file !== "moves.csv" && row.file !== "catheters.csv") return false;
  if (row.file === "moves.csv" && cell(row, "ward") !== unit) return false;
  const { from, to } = spanOf(row, first as string, last as string);
  return from <= at && to > at;
}

/** What is missing from a unit is looked for once it is known what the unit is: until then nothing can be signed. */
function isDescribed(folder: Folder, unit: string): boolean {
  return rowsOf(folder, "wards.csv").some((row) => cell(row, "ward") === unit);
}
