import type { IntakeLine, LineOf, PatientLine } from "../../domain/intake/intake-line.ts";
import { nextGroups, type WaitingLine, waitingLines } from "../../store/import-lines.ts";
import type { Read } from "../../store/store.ts";
import { groupKinds } from "./group-lines.ts";
import type { PatientGroup } from "./plan-group.ts";

/** How many groups are worked on in one short transaction. */
const groupsAtATime = 500;

/** Waiting lines of some groups, by what they are about. */
export interface WaitingChunk {
  readonly lastKey: string;
  readonly lineCount: number;
  readonly wards: readonly LineOf<"wards.csv">[];
  readonly patients: readonly PatientGroup[];
  readonly counts: readonly LineOf<"daily-counts.csv">[];
}

/** The next waiting groups after `after`; null when none is left. */
export async function nextChunk(read: Read, importId: number, after: string): Promise<WaitingChunk | null> {
  const keys = await nextGroups(read, importId, after, groupsAtATime);
  const lastKey = keys.at(-1);
  if (lastKey === undefined) return null;
  const waiting = await waitingLines(read, importId, keys);
  const parsed = waiting.map((stored) => ({ stored, line: JSON.parse(stored.content) as IntakeLine }));
  const lines = parsed.filter(({ stored }) => stored.state === "staged").map(({ line }) => line);
  return {
    lastKey,
    lineCount: lines.length,
    wards: lines.filter((line) => line.file === "wards.csv"),
    counts: lines.filter((line) => line.file === "daily-counts.csv"),
    patients: patientGroups(parsed),
  };
}

function patientGroups(parsed: readonly { stored: WaitingLine; line: IntakeLine }[]): PatientGroup[] {
  const groups = new Map<string, { lines: PatientLine[]; seen: PatientLine[] }>();
  for (const { stored, line } of parsed) {
    if (line.file === "wards.csv" || line.file === "daily-counts.csv") continue;
    const group = groups.get(stored.groupKey) ?? { lines: [], seen: [] };
    groups.set(stored.groupKey, group);
    (stored.state === "staged" ? group.lines : group.seen).push(line);
  }
  return [...groups].map(([key, group]) => ({
    identifier: key.startsWith(groupKinds.patient) ? key.slice(groupKinds.patient.length) : null,
    ...group,
  }));
}

/** The wards that the lines of a chunk name, whether or not anybody described them. */
export function wardsNamed(chunk: WaitingChunk): string[] {
  const moves = chunk.patients.flatMap((group) =>
    group.lines.flatMap((line) => (line.file === "moves.csv" ? [line.values.ward] : [])),
  );
  return [...new Set([...moves, ...chunk.counts.map((line) => line.values.ward)])];
}
