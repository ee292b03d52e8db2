import type { Month } from "../../shared/day.ts";
import type { Instant } from "../domain/days/day-number.ts";
import type { LineAbout } from "../domain/intake/line-about.ts";
import type { LineMark } from "../domain/intake/outcome.ts";
import { insertRows, textList } from "./bulk.ts";
import type { LinePlace } from "./set-aside-lines.ts";
import type { Read, Tx } from "./store.ts";
import { anyMonth, from, type Months, monthsOf, touchMonths } from "./touched-months.ts";

/** A line of an import that was rejected or marked, with what it names. */
export interface NamedLine {
  readonly file: string;
  readonly line: number;
  readonly about: LineAbout | null;
  /** Null: it was rejected. */
  readonly marks: readonly LineMark[] | null;
}

/** The rejected and marked lines of an import in the order of files and lines, a page at a time; or one alone. */
export async function namedLines(
  read: Read,
  importId: number,
  which: { after: { file: string; line: number } | null; count: number } | { only: { file: string; line: number } },
): Promise<NamedLine[]> {
  const after = "after" in which ? which.after : null;
  const later = after ? { OR: [{ file: { gt: after.file } }, { file: after.file, line: { gt: after.line } }] } : {};
  const place = "only" in which ? which.only : later;
  const rows = await read.db.importLine.findMany({
    where: { importId, state: { in: ["refused", "marked"] }, ...place },
    select: { file: true, line: true, state: true, about: true, faults: true },
    orderBy: [{ file: "asc" }, { line: "asc" }],
    ...("count" in which ? { take: which.count } : {}),
  });
  return rows.map(({ file, line, state, about, faults }) => ({
    ...{ file, line },
    about: about === null ? null : (JSON.parse(about) as LineAbout),
    marks: state === "marked" ? (JSON.parse(faults ?? "[]") as LineMark[]) : null,
  }));
}

/** A line with the months that it touches; none: any month. */
export interface PlacedLine extends LinePlace {
  readonly months: readonly Month[];
  /** It touches this month and each later one; null: its end is known. */
  readonly openFrom: Month | null;
  /** Codes of wards; null when none can be read. */
  readonly wards: readonly string[] | null;
  /** False when the months are those of its import. */
  readonly dated: boolean;
}

const table = {
  table: "import_line_month",
  columns: {
    import_id: "int",
    file: "text",
    line: "int",
    month: "text",
    facility_id: "int",
    wards: "text",
    dated: "bool",
  },
} as const;

/** Writes down which months lines touch. Done again it changes nothing. */
export async function placeLines(tx: Tx, facilityId: number, lines: readonly PlacedLine[]): Promise<void> {
  const rows = lines.flatMap(({ importId, file, line, months, openFrom, wards, dated }) =>
    [...(months.length === 0 ? [anyMonth] : months), ...(openFrom === null ? [] : [`${from}${openFrom}`])].map(
      (month) => [...[importId, file, line, month, facilityId, wards && JSON.stringify(wards), dated]],
    ),
  );
  const months = lines.flatMap((line) => line.months.map((month): Months => ({ from: month, to: month })));
  touchMonths(tx, [
    ...months,
    ...lines.flatMap(({ openFrom }) => (openFrom === null ? [] : { from: openFrom, to: null })),
  ]);
  await insertRows(tx, table, rows, "ON CONFLICT DO NOTHING");
}

/** Notes that something became of a line that touches some months. */
export async function touchLine(tx: Tx, { importId, file, line }: LinePlace): Promise<void> {
  const rows = await tx.db.importLineMonth.findMany({ where: { importId, file, line }, select: { month: true } });
  touchMonths(
    tx,
    rows.flatMap(({ month }) => monthsOf(month)),
  );
}

/** Forgets which months a line touches: it is stored now. */
export async function forgetMonths(tx: Tx, { importId, file, line }: LinePlace): Promise<void> {
  await touchLine(tx, { importId, file, line });
  await tx.db.importLineMonth.deleteMany({ where: { importId, file, line } });
}

/** A line that touches some months and is not in the record, or is doubtful there. */
export interface TouchingLine extends LinePlace {
  readonly state: "refused" | "marked" | "dropped";
  readonly wards: readonly string[] | null;
  readonly dated: boolean;
  /** The source of its import; null: imported before sources were recorded. */
  readonly sourceId: number | null;
  /** When its import was begun and when it ended. */
  readonly startedAt: Instant;
  readonly finishedAt: Instant;
  readonly reason: string | null;
  readonly settledBy: number | null;
  readonly settledAt: Instant | null;
}

interface Row {
  readonly month: string;
  readonly import_id: number;
  readonly file: string;
  readonly line: number;
  readonly state: TouchingLine["state"];
  readonly wards: string | null;
  readonly dated: boolean | number;
  readonly source_id: number | null;
  readonly started_at: Stored;
  readonly finished_at: Stored | null;
  readonly reason: string | null;
  readonly settled_by: number | null;
  readonly settled_at: Stored | null;
}
/** An instant as each database gives it where Prisma does not read it. */
type Stored = Date | number | bigint;

/** The lines that touch any of these months, each once, in the order of imports, files and lines. */
export async function linesTouching(read: Read, facilityId: number, months: readonly Month[]): Promise<TouchingLine[]> {
  const isSqlite = read.kind === "sqlite";
  const rows = await read.sql.rows<Row>(
    `SELECT m.month, m.import_id, m.file, m.line, m.wards, m.dated, l.state, l.reason, l.settled_by, l.settled_at,
       i.source_id, i.started_at, i.finished_at
     FROM import_line_month m
     JOIN import_line l ON l.import_id = m.import_id AND l.file = m.file AND l.line = m.line
     JOIN import i ON i.id = m.import_id
     WHERE m.facility_id = ${isSqlite ? "$1" : "$1::int"}
       AND (m.month IN ${textList(read, 2)}
         OR m.month BETWEEN '${from}0000-00' AND ${isSqlite ? "$3" : "$3::text"})
       AND l.state IN ('refused', 'marked', 'dropped')
     ORDER BY m.import_id, m.file, m.line`,
    facilityId,
    JSON.stringify([anyMonth, ...months]),
    `${from}${months.toSorted().at(-1) ?? ""}`,
  );
  const lines = new Map(
    rows
      .filter((row) => isMissedIn(row, months))
      .map((row) => [`${row.import_id} ${row.file} ${row.line}`, lineFrom(row)]),
  );
  return [...lines.values()];
}

/** A line without an end that was dropped is missing up to the month in which a person dropped it. */
function isMissedIn({ month, state, settled_at: at }: Row, months: readonly Month[]): boolean {
  if (!month.startsWith(from) || state !== "dropped" || at === null) return true;
  const droppedIn = new Date(Number(at)).toISOString().slice(0, 7);
  return months.some((asked) => `${from}${asked}` >= month && asked <= droppedIn);
}

function lineFrom(row: Row): TouchingLine {
  const {
    import_id: importId,
    source_id: sourceId,
    file,
    line,
    state,
    wards,
    dated,
    reason,
    settled_by: settledBy,
  } = row;
  const at = (value: Stored): Instant => Number(value);
  return {
    ...{ importId, sourceId, file, line, state, reason, settledBy },
    wards: wards === null ? null : (JSON.parse(wards) as string[]),
    dated: Boolean(dated),
    startedAt: at(row.started_at),
    finishedAt: at(row.finished_at ?? row.started_at),
    settledAt: row.settled_at === null ? null : at(row.settled_at),
  };
}
