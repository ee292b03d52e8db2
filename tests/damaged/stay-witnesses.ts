import { spanOf } from "./count-censuses.ts";
import { cell, dayMinutes, type Folder, minutesOf, type Row, rowsOf, timeText } from "./folder.ts";
import { between, type Contradiction, type Trace } from "./traces.ts";
import type { Judged } from "./witnesses.ts";

/** The lines of one stay number. */
interface StayLines {
  readonly number: string;
  readonly stays: readonly Row[];
  readonly moves: readonly Row[];
}

/** What the lines about stays say against each other. */
export function stayWitnesses(folder: Folder, judged: Judged): Contradiction[] {
  const numbers = new Set(
    [...rowsOf(folder, "stays.csv"), ...rowsOf(folder, "moves.csv")].map((row) => cell(row, "stay")),
  );
  const all = [...numbers].map((number): StayLines => {
    const of = (file: "stays.csv" | "moves.csv") => rowsOf(folder, file).filter((row) => cell(row, "stay") === number);
    const moves = of("moves.csv").sort((a, b) => spanOf(a, "from", "to").from - spanOf(b, "from", "to").from);
    return { number, stays: of("stays.csv"), moves };
  });
  return [
    ...all.flatMap((stay) => [...ofTwoPatients(stay), ...moveWitnesses(stay, judged), ...notDescribed(stay)]),
    ...overlapping(all),
    ...withoutStay(folder, all),
    ...catheterWitnesses(folder, all, judged),
    ...specimenWitnesses(folder, all),
  ];
}

function ofTwoPatients({ stays, moves }: StayLines): Contradiction[] {
  const rows = [...stays, ...moves];
  const patients = new Set(rows.map((row) => cell(row, "patient")));
  return patients.size > 1 ? [between("a stay of two patients", rows)] : [];
}

/** A stay that only moves tell of, where the others have lines of their own. */
function notDescribed({ number, stays, moves }: StayLines): Contradiction[] {
  if (stays.length > 0) return [];
  const units = moves.map(undescribedOn);
  const missing = (row: Row) => row.file === "stays.csv" && cell(row, "stay") === number;
  const traces = [...units, ...moves.map((row) => ({ row }))];
  return [{ name: "a stay without its own line", rows: moves, missing, traces }];
}

function undescribedOn(move: Row): Trace {
  return { gap: "stay-not-described", unit: cell(move, "ward") };
}

const staySpan = ({ stays, moves }: StayLines): { from: number; to: number } => {
  const [own] = stays;
  if (own) return spanOf(own, "admitted", "discharged");
  const spans = moves.map((row) => spanOf(row, "from", "to"));
  return { from: Math.min(...spans.map(({ from }) => from)), to: Math.max(...spans.map(({ to }) => to)) };
};

function moveWitnesses(stay: StayLines, { readAt }: Judged): Contradiction[] {
  const { stays, moves } = stay;
  const span = staySpan(stay);
  const spans = moves.map((row) => ({ row, ...spanOf(row, "from", "to") }));
  const outside = spans
    .filter(({ from, to }) => stays.length > 0 && (from < span.from || to > span.to))
    .map(({ row }) => between("a move outside its stay", [...stays, row]));
  const pairs = spans.flatMap((one, i) =>
    spans
      .slice(i + 1)
      .filter(({ from }) => from < one.to)
      .map((other) => between("two places at once", [one.row, other.row])),
  );
  return [...outside, ...pairs, ...holesOf(stay, { span, readAt })];
}

/** Time of a stay on no unit: between two moves always, at its ends where a census lies in it. */
function holesOf(
  { number, stays, moves }: StayLines,
  { span, readAt }: { span: { from: number; to: number }; readAt: number },
): Contradiction[] {
  const hole = (from: number, to: number, rows: readonly Row[], flagged: readonly Row[]): Contradiction => {
    const missing = (row: Row) => {
      const lost = spanOf(row, "from", "to");
      return row.file === "moves.csv" && cell(row, "stay") === number && lost.from < to && lost.to > from;
    };
    const traces: Trace[] = [
      ...flagged.map((row) => ({ row })),
      ...censusDays(from, to).map((day) => ({ gap: "absence-at-census", unit: null, day }) as const),
    ];
    return { name: "time on no unit", rows: [...stays, ...rows], missing, traces };
  };
  const found: Contradiction[] = [];
  let before: Row | null = null;
  let at = span.from;
  for (const row of moves) {
    const { from, to } = spanOf(row, "from", "to");
    const isExplained = before !== null && cell(before, "absence") !== "";
    if (from > at && !isExplained && (before !== null || censusDays(at, from).length > 0))
      found.push(hole(at, from, before ? [before, row] : [row], [before ?? row, row]));
    at = Math.max(at, to);
    before = row;
  }
  const end = Math.min(span.to, readAt);
  const isExplained = before !== null && cell(before, "absence") !== "";
  if (at < end && !isExplained && censusDays(at, end).length > 0)
    found.push(hole(at, end, before ? [before] : [], before ? [before] : []));
  return found;
}

/** The days whose midnight lies in some minutes; the end is not a part of them. */
function censusDays(from: number, to: number): string[] {
  const days: string[] = [];
  for (let at = Math.ceil(from / dayMinutes) * dayMinutes; at < to; at += dayMinutes)
    days.push(timeText(at).slice(0, 10));
  return days;
}

/** A patient with two stays at one time. */
function overlapping(all: readonly StayLines[]): Contradiction[] {
  const spans = all.map((stay) => {
    const rows = [...stay.stays, ...stay.moves];
    return { rows, patients: new Set(rows.map((row) => cell(row, "patient"))), ...staySpan(stay) };
  });
  return spans.flatMap((one, i) =>
    spans
      .slice(i + 1)
      .filter((other) => one.from < other.to && other.from < one.to)
      .filter((other) => [...one.patients].some((patient) => other.patients.has(patient)))
      .map((other) => between("two stays at once", [...one.rows, ...other.rows])),
  );
}

/** Lines of a stay of which nothing else tells. */
function withoutStay(folder: Folder, all: readonly StayLines[]): Contradiction[] {
  const known = new Set(all.map(({ number }) => number));
  return (["catheters.csv", "reviews.csv", "specimens.csv", "signs.csv"] as const)
    .flatMap((file) => rowsOf(folder, file))
    .filter((row) => cell(row, "stay") !== "" && !known.has(cell(row, "stay")))
    .map((row): Contradiction => {
      const missing = (lost: Row) =>
        (lost.file === "stays.csv" || lost.file === "moves.csv") && cell(lost, "stay") === cell(row, "stay");
      return { ...between("a stay that is not there", [row]), missing };
    });
}

function catheterWitnesses(folder: Folder, all: readonly StayLines[], { readAt }: Judged): Contradiction[] {
  const catheters = rowsOf(folder, "catheters.csv");
  const stays = new Map(all.map((stay) => [stay.number, stay]));
  const outside = catheters.flatMap((row): Contradiction[] => {
    const stay = stays.get(cell(row, "stay"));
    if (!stay) return [];
    const [span, own] = [staySpan(stay), spanOf(row, "inserted", "removed")];
    const isLate = own.from >= span.to || (cell(row, "removed") !== "" && own.to > span.to) || own.to <= span.from;
    if (!isLate) return [];
    const found = between("a catheter outside its stay", [...stay.stays, ...stay.moves, row]);
    // Where the stay's own line is gone, its end is that of its last move, which another move may follow.
    const instead = stay.stays.length > 0 ? [] : stay.moves.map((move): Trace => undescribedOn(move));
    return [{ ...found, traces: [...found.traces, ...instead] }];
  });
  const reviews = rowsOf(folder, "reviews.csv").flatMap((row): Contradiction[] => {
    const same = (other: Row) =>
      other.file === "catheters.csv" &&
      cell(other, "catheter") === cell(row, "catheter") &&
      (cell(row, "stay") === "" || cell(other, "stay") === cell(row, "stay"));
    const own = catheters.find(same);
    if (!own) return [{ ...between("a review of no catheter", [row]), missing: same }];
    const at = minutesOf(cell(row, "day"));
    const { from, to } = spanOf(own, "inserted", "removed");
    return at < from || at > Math.min(to, readAt) ? [between("a review outside its catheter", [row, own])] : [];
  });
  return [...outside, ...reviews];
}

/** Lines of one specimen that say two times; and cultures more than 4 days after discharge. */
function specimenWitnesses(folder: Folder, all: readonly StayLines[]): Contradiction[] {
  const lines = rowsOf(folder, "specimens.csv");
  const id = (row: Row) => `${cell(row, "stay")} ${cell(row, "specimen")}`;
  const pairs = lines.flatMap((row, i) =>
    lines
      .slice(0, i)
      .filter((other) => id(other) === id(row) && cell(other, "collected") !== cell(row, "collected"))
      .map((other) => between("a specimen of two times", [other, row])),
  );
  const late = [...lines, ...rowsOf(folder, "signs.csv")].flatMap((row): Contradiction[] => {
    const stay = all.find(({ number }) => number === cell(row, "stay"));
    const day = (cell(row, "collected") || cell(row, "day")).slice(0, 10);
    const discharged = stay ? staySpan(stay).to : Number.POSITIVE_INFINITY;
    const isLate = minutesOf(`${day}T00:00`) >= (Math.floor(discharged / dayMinutes) + 5) * dayMinutes;
    return isLate ? [between("a culture long after its stay", [row, ...(stay?.stays ?? [])], [row])] : [];
  });
  return [...pairs, ...late];
}
