import { refuse } from "../../shared/problems.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";

/**
 * `staging`: lines arrive; nothing counts. `checking`: each is tried. `applying`: decided; a broken-off one is finished
 * at the next start. `applied`, `refused` and `dry-run` are ends.
 */
export type ImportState = "staging" | "checking" | "applying" | "applied" | "refused" | "dry-run";

export interface ImportRow {
  readonly id: number;
  readonly facilityId: number;
  readonly personId: number;
  readonly state: ImportState;
  readonly setAside: boolean;
  /** A ward whose setting nobody gave counts as an inpatient ward. */
  readonly assumeInpatient: boolean;
}

/** A new import; returns its id. */
export async function addImport(
  tx: Tx,
  by: Recording,
  { setAside, assumeInpatient }: { setAside: boolean; assumeInpatient: boolean },
): Promise<number> {
  const id = tx.newId();
  const { facilityId, personId, now } = by;
  await tx.db.import.create({
    data: { id, facilityId, personId, state: "staging", setAside, assumeInpatient, startedAt: new Date(now) },
  });
  return id;
}

/** From which states an import can come to each. */
const statesBefore: Readonly<Record<ImportState, readonly ImportState[]>> = {
  staging: [],
  checking: ["staging"],
  applying: ["checking", "applying"],
  applied: ["applying"],
  refused: ["staging", "checking"],
  "dry-run": ["checking"],
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

/** Imports of a state, oldest first. */
export async function importsIn(read: Read, states: readonly ImportState[]): Promise<ImportRow[]> {
  const rows = await read.db.import.findMany({ where: { state: { in: [...states] } }, orderBy: { id: "asc" } });
  return rows.map(({ id, facilityId, personId, state, setAside, assumeInpatient }) => ({
    id,
    facilityId,
    personId,
    setAside,
    assumeInpatient,
    state: state as ImportState,
  }));
}
