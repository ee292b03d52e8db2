import { type ImportState, statesAtWork } from "../../shared/import-words.ts";
import { refuse } from "../../shared/problems.ts";
import type { DayNumber } from "../domain/days/day-number.ts";
import { intakeFiles } from "../domain/intake/line-about.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";

export interface ImportRow {
  readonly id: number;
  readonly facilityId: number;
  readonly personId: number;
  /** Null: imported before sources were recorded. */
  readonly sourceId: number | null;
  readonly state: ImportState;
  readonly setAside: boolean;
  /** A ward whose setting nobody gave counts as an inpatient ward. */
  readonly assumeInpatient: boolean;
}

/** A new import, `staging` when it is read at once; returns its id. */
export async function addImport(
  tx: Tx,
  by: Recording,
  given: { setAside: boolean; assumeInpatient: boolean; sourceId: number | null; state?: "received" | "staging" },
): Promise<number> {
  const id = tx.newId();
  const { setAside, assumeInpatient, sourceId, state = "staging" } = given;
  const { facilityId, personId, now } = by;
  await tx.db.import.create({
    data: { id, facilityId, personId, sourceId, state, setAside, assumeInpatient, startedAt: new Date(now) },
  });
  return id;
}

/** From which states an import can come to each. */
const statesBefore: Readonly<Record<ImportState, readonly ImportState[]>> = {
  received: ["staging", "checking"],
  staging: ["received"],
  checking: ["staging"],
  checked: ["checking"],
  applying: ["checking", "checked", "applying"],
  applied: ["applying"],
  refused: ["staging", "checking"],
  "dry-run": ["checking"],
  discarded: ["checked"],
};

/**
 * Moves an import on; an end carries what became of the lines. Refuses `import-interrupted` when somebody else ended
 * it meanwhile.
 */
export async function setImportState(
  tx: Tx,
  importId: number,
  state: ImportState,
  end?: { summary: object; finishedAt: number },
): Promise<void> {
  const ended = end ? { summary: JSON.stringify(end.summary), finishedAt: new Date(end.finishedAt) } : {};
  const where = { id: importId, state: { in: [...statesBefore[state]] } };
  const { count } = await tx.db.import.updateMany({ where, data: { state, ...ended } });
  if (count === 0) refuse("import-interrupted", "Somebody else ended this import while it ran.");
}

/** How many lines the step under way has behind it, and how many it has in all, where that is known. */
export async function setProgress(
  tx: Tx,
  importId: number,
  progress: { done: number; total: number | null },
): Promise<void> {
  await tx.db.import.updateMany({ where: { id: importId }, data: progress });
}

/** Imports of a state, oldest first; only the one of a number when given. */
export async function importsIn(read: Read, states: readonly ImportState[], id?: number): Promise<ImportRow[]> {
  const where = { state: { in: [...states] }, ...(id === undefined ? {} : { id }) };
  const rows = await read.db.import.findMany({ where, orderBy: { id: "asc" } });
  return rows.map(rowFrom);
}

/** An import with what a person is told of it. */
export interface ImportTold extends ImportRow {
  readonly sourceName: string | null;
  readonly startedAt: number;
  readonly finishedAt: number | null;
  readonly done: number | null;
  readonly total: number | null;
  /** As JSON. */
  readonly notices: string | null;
  readonly effects: string | null;
  /** As JSON. */
  readonly wardCodes: string | null;
}

/** The import of that number in a facility; null when it has none. */
export async function importOf(read: Read, facilityId: number, importId: number): Promise<ImportTold | null> {
  const row = await read.db.import.findFirst({ where: { id: importId, facilityId }, ...withSource });
  return row && toldFrom(row);
}

/** Imports of a facility below a number, newest first. */
export async function importsOf(
  read: Read,
  facilityId: number,
  { before, count }: { before?: number | undefined; count: number },
): Promise<ImportTold[]> {
  const where = { facilityId, ...(before === undefined ? {} : { id: { lt: before } }) };
  return (await read.db.import.findMany({ where, orderBy: { id: "desc" }, take: count, ...withSource })).map(toldFrom);
}

/** Writes down the end of reading and trying, or the decision of a person, beside the state. */
export async function noteImport(
  tx: Tx,
  importId: number,
  said: {
    setAside?: boolean;
    notices?: string;
    effects?: string;
    wardCodes?: string;
    firstDay?: DayNumber;
    lastDay?: DayNumber;
  },
): Promise<void> {
  await tx.db.import.update({ where: { id: importId }, data: said });
}

/** An import that is not stored, as far as a month is concerned. */
export interface OpenImport {
  readonly importId: number;
  readonly state: ImportState;
  /** The days that its lines name; null when they name none, or are not all read yet. */
  readonly days: { readonly first: DayNumber; readonly last: DayNumber } | null;
  /** One of its files breaks off. */
  readonly isBroken: boolean;
}

/** States of imports that are at work or wait for a decision. */
export const waitingStates: ImportState[] = [...statesAtWork, "checked"];

/** Imports that are at work or wait for a decision, and those refused since the last one of their source was stored. */
export async function openImports(read: Read, facilityId: number): Promise<OpenImport[]> {
  const sources = await read.db.importSource.findMany({ where: { facilityId }, select: { id: true } });
  const refusedSince: { sourceId: number | null; state: string; id: { gt: number } }[] = [];
  for (const sourceId of [null, ...sources.map(({ id }) => id)]) {
    const where = { facilityId, sourceId, state: "applied" };
    const stored = await read.db.import.findFirst({ where, select: { id: true }, orderBy: { id: "desc" } });
    refusedSince.push({ sourceId, state: "refused", id: { gt: stored?.id ?? 0 } });
  }
  const rows = await read.db.import.findMany({
    where: { facilityId, OR: [{ state: { in: waitingStates } }, ...refusedSince] },
    select: { id: true, state: true, firstDay: true, lastDay: true },
    orderBy: { id: "asc" },
  });
  const broken = await read.db.importLine.findMany({
    // Its files are named, so that the key of lines finds this one line of each.
    where: {
      ...{ importId: { in: rows.map(({ id }) => id) }, file: { in: [...intakeFiles] } },
      ...{ line: 0, state: "refused" },
    },
    select: { importId: true },
  });
  return rows.map(({ id: importId, state, firstDay, lastDay }) => ({
    ...{ importId, state: state as ImportState },
    days: firstDay === null || lastDay === null ? null : { first: firstDay, last: lastDay },
    isBroken: broken.some((line) => line.importId === importId),
  }));
}

/** The days that the lines of an import name; null when they name none. */
export async function daysOfImport(read: Read, importId: number): Promise<OpenImport["days"]> {
  const { firstDay, lastDay } = await read.db.import.findUniqueOrThrow({
    where: { id: importId },
    select: { firstDay: true, lastDay: true },
  });
  return firstDay === null || lastDay === null ? null : { first: firstDay, last: lastDay };
}

const withSource = { include: { source: { select: { name: true } } } } as const;

type StoredImport = NonNullable<Awaited<ReturnType<Read["db"]["import"]["findFirst"]>>>;

function rowFrom({ id, facilityId, personId, sourceId, state, setAside, assumeInpatient }: StoredImport): ImportRow {
  return { id, facilityId, personId, sourceId, setAside, assumeInpatient, state: state as ImportState };
}

function toldFrom(row: StoredImport & { source: { name: string } | null }): ImportTold {
  const { startedAt, finishedAt, done, total, notices, effects, wardCodes, source } = row;
  const at = { startedAt: startedAt.getTime(), finishedAt: finishedAt?.getTime() ?? null };
  return { ...rowFrom(row), sourceName: source?.name ?? null, ...at, done, total, notices, effects, wardCodes };
}
