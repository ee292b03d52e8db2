import type { LineKind } from "../../shared/import-words.ts";
import type { LineAbout } from "../domain/intake/line-about.ts";
import type { Outcome } from "../domain/intake/outcome.ts";
import { insertRows, textList } from "./bulk.ts";
import type { Read, Tx } from "./store.ts";

/** A line in the database while it waits, and afterwards. */
export interface StagedLine {
  readonly file: string;
  readonly line: number;
  readonly groupKey: string;
  readonly fingerprint: string;
  /** What the line is about. */
  readonly entryKey: string;
  /** The line as JSON; of a refused one, its text. */
  readonly content: string | null;
  readonly state: "staged" | "unchanged" | "refused" | "blank";
  /** Faults as JSON, of a line that was refused when it was read. */
  readonly faults: string | null;
  /** What a refused line names. */
  readonly about: LineAbout | null;
}

const lineTable = {
  table: "import_line",
  columns: {
    import_id: "int",
    file: "text",
    line: "int",
    state: "text",
    group_key: "text",
    fingerprint: "text",
    entry_key: "text",
    content: "text",
    faults: "text",
    about: "text",
  },
} as const;

/** Puts lines down to wait. */
export async function stageLines(tx: Tx, importId: number, lines: readonly StagedLine[]): Promise<void> {
  await insertRows(
    tx,
    lineTable,
    lines.map((l) => [
      ...[importId, l.file, l.line, l.state, l.groupKey, l.fingerprint, l.entryKey, l.content, l.faults],
      textOf(l.about),
    ]),
  );
}

/**
 * The fingerprint of the latest line of this facility about each of these things that was stored, or said what was
 * recorded already, by entry key. A line that is no longer the latest is read anew: it takes a later one back.
 */
export async function latestFingerprints(
  read: Read,
  facilityId: number,
  entryKeys: readonly string[],
): Promise<Map<string, string>> {
  const rows = await read.sql.rows<{ entry_key: string; fingerprint: string }>(
    `SELECT entry_key, fingerprint FROM import_line l
     WHERE entry_key IN ${textList(read, 1)}
       AND state IN ('accepted', 'marked', 'unchanged') AND EXISTS (SELECT 1 FROM import i
         WHERE i.id = l.import_id AND i.facility_id = ${read.kind === "sqlite" ? "$2" : "$2::int"})
     ORDER BY import_id, line`,
    JSON.stringify([...new Set(entryKeys)]),
    facilityId,
  );
  return new Map(rows.map((row) => [row.entry_key, row.fingerprint]));
}

/** The next groups of waiting lines after `after`, in order. */
export async function nextGroups(read: Read, importId: number, after: string, count: number): Promise<string[]> {
  const rows = await read.db.importLine.groupBy({
    by: ["groupKey"],
    where: { importId, state: "staged", groupKey: { gt: after } },
    orderBy: { groupKey: "asc" },
    take: count,
  });
  return rows.map((row) => row.groupKey);
}

export interface WaitingLine {
  /** `unchanged`: stored before, and here only so that no other line may contradict it. */
  readonly state: "staged" | "unchanged";
  readonly file: string;
  readonly line: number;
  readonly groupKey: string;
  readonly content: string;
}

/** The waiting lines of these groups and those stored before, in the order of files and lines. */
export async function waitingLines(read: Read, importId: number, groups: readonly string[]): Promise<WaitingLine[]> {
  const rows = await read.db.importLine.findMany({
    where: { importId, state: { in: ["staged", "unchanged"] }, groupKey: { in: [...groups] }, content: { not: null } },
    select: { state: true, file: true, line: true, groupKey: true, content: true },
    orderBy: [{ groupKey: "asc" }, { file: "asc" }, { line: "asc" }],
  });
  return rows.map((row) => ({ ...row, state: row.state as WaitingLine["state"], content: row.content ?? "" }));
}

function textOf(about: LineAbout | null): string | null {
  return about && JSON.stringify(about);
}

export interface LineOutcome {
  readonly file: string;
  readonly line: number;
  /** What the line names: kept when it is refused or marked. */
  readonly about: LineAbout | null;
  /** The line as it stands in the file: kept when it is refused. */
  readonly raw: string;
  readonly outcome: Outcome;
}

/** Writes down what became of lines. What a stored line said is dropped: the record holds it now. */
export async function settleLines(tx: Tx, importId: number, outcomes: readonly LineOutcome[]): Promise<void> {
  if (outcomes.length === 0) return;
  // Every line is there already, so each row of this insert meets it by its key and changes it.
  const rows = outcomes.map(({ file, line, raw, about, outcome }) => {
    const content = outcome.state === "refused" ? raw : null;
    const kept = outcome.state === "refused" || outcome.state === "marked" ? about : null;
    return [importId, file, line, outcome.state, "", "", "", content, detailsOf(outcome), textOf(kept)];
  });
  await insertRows(
    tx,
    lineTable,
    rows,
    `ON CONFLICT (import_id, file, line) DO UPDATE SET state = excluded.state, faults = excluded.faults,
     content = excluded.content, about = excluded.about`,
  );
}

function detailsOf(outcome: Outcome): string | null {
  if (outcome.state === "refused") return JSON.stringify(outcome.faults);
  return outcome.state === "marked" ? JSON.stringify(outcome.marks) : null;
}

/** Drops the waiting lines of an import that is not carried out; refused ones stay, for repair. */
export async function dropWaiting(tx: Tx, importId: number): Promise<void> {
  await tx.db.importLine.deleteMany({ where: { importId, state: { in: ["staged", "unchanged"] } } });
}

/** Drops what the lines of an import said that were stored before: the record holds it. */
export async function forgetUnchanged(tx: Tx, importId: number): Promise<void> {
  await tx.db.importLine.updateMany({
    where: { importId, state: "unchanged", content: { not: null } },
    data: { content: null },
  });
}

/** Drops all lines of an import that is read anew. */
export async function dropLines(tx: Tx, importId: number): Promise<void> {
  await tx.db.importLine.deleteMany({ where: { importId } });
}

/** How many lines of an import are in each state. */
export async function countLines(read: Read, importId: number): Promise<Readonly<Record<string, number>>> {
  const rows = await read.db.importLine.groupBy({ by: ["state"], where: { importId }, _count: true });
  return Object.fromEntries(rows.map((row) => [row.state, row._count]));
}

export interface SettledLine {
  readonly file: string;
  readonly line: number;
  /** Faults or marks as JSON. */
  readonly faults: string;
  /** The text of a line that is, or was, refused. */
  readonly content: string | null;
  readonly settledBy: number | null;
  readonly reason: string | null;
}

/** Lines that are asked for: `repaired` ones were refused first, and a person mended them. */
const whichLines: Readonly<Record<LineKind, object>> = {
  refused: { state: "refused" },
  marked: { state: "marked", settledBy: null },
  repaired: { state: { in: ["accepted", "marked", "unchanged"] }, settledBy: { not: null } },
  dropped: { state: "dropped" },
};

/** Lines of one kind with their faults or marks, a page at a time, in the order of files and lines. */
export async function settledLines(
  read: Read,
  importId: number,
  { kind, after, count = 1000 }: { kind: LineKind; after: { file: string; line: number } | null; count?: number },
): Promise<SettledLine[]> {
  const later = after ? { OR: [{ file: { gt: after.file } }, { file: after.file, line: { gt: after.line } }] } : {};
  const rows = await read.db.importLine.findMany({
    where: { importId, ...whichLines[kind], ...later },
    select: { file: true, line: true, faults: true, content: true, settledBy: true, reason: true },
    orderBy: [{ file: "asc" }, { line: "asc" }],
    take: count,
  });
  return rows.map((row) => ({ ...row, faults: row.faults ?? "[]" }));
}
