import { type Present, presentAt, spanOf } from "./count-censuses.ts";
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
 * product makes of them. `before` is the folder as it was: it tells who should have been counted where.
 */
export function witnesses(folder: Folder, before: Folder, judged: Judged): Contradiction[] {
  const unreadable = folder.filter((row) => !isReadable(row, judged.readAt));
  const readable = folder.filter((row) => !unreadable.includes(row));
  const found = [
    ...unreadable.map((row) => between("cannot be read", [row])),
    ...unknownNames(readable),
    ...unknownUnits(folder, readable),
    ...stayWitnesses(readable, judged),
    ...countedTwice(readable),
    ...notCounted(folder, judged),
  ];
  return [...found, ...countedOtherwise({ folder: readable, before, judged }, found)];
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

/**
 * Days on which the lines give another number than was counted by hand, with the stays that contradict themselves and
 * without them: where they make up for a loss by chance, two damages hide each other and no count can tell.
 */
function countedOtherwise(
  { folder, before, judged }: { folder: Folder; before: Folder; judged: Judged },
  others: readonly Contradiction[],
): Contradiction[] {
  const then = presentAt(before, judged);
  const doubtful = new Set(
    others.flatMap(({ rows }) => rows.map((row) => cell(row, "stay"))).filter((stay) => stay !== ""),
  );
  const certain = folder.filter((row) => !doubtful.has(cell(row, "stay")));
  const counts = [presentAt(folder, judged), presentAt(certain, judged)];
  return rowsOf(folder, "daily-counts.csv").flatMap((count): Contradiction[] => {
    const present = counts.flatMap((found) => found.get(unitDay(count)) ?? []);
    const agrees = ({ patients, catheters }: Present) =>
      String(patients.size) === cell(count, "patients") && String(catheters.size) === cell(count, "catheters");
    if (present.length === 0 || present.some(agrees)) return [];
    const unit = cell(count, "ward");
    const at = minutesOf(`${cell(count, "day")}T00:00`);
    const moved = differing(then.get(unitDay(count)), present[0]);
    const changed = (was: Row, is: Row | null) =>
      isAt(was, unit, at) !== (is !== null && isAt(is, unit, at)) &&
      (moved.has(cell(was, "stay")) || (is !== null && moved.has(cell(is, "stay"))));
    const gap = isDescribed(folder, unit) ? "manual-count-differs" : "setting-missing";
    const day = gap === "setting-missing" ? undefined : cell(count, "day");
    const traces = [{ gap, unit, day } as const];
    return [{ name: "counted otherwise by hand", rows: [], missing: () => false, changed, traces }];
  });
}

/** The stays, and those with a catheter, that are present in one of two ways of counting alone. */
function differing(one: Present | undefined, other: Present | undefined): Set<string> {
  return new Set(
    (["patients", "catheters"] as const).flatMap((kind) => {
      const [some, others] = [one?.[kind] ?? new Set<string>(), other?.[kind] ?? new Set<string>()];
      return [...[...some].filter((stay) => !others.has(stay)), ...[...others].filter((stay) => !some.has(stay))];
    }),
  );
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
