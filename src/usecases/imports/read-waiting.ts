import type { IntakeLine, LineOf, PatientLine } from "../../domain/intake/intake-line.ts";
import { nextGroups, type WaitingLine, waitingLines } from "../../store/import-lines.ts";
import type { Read } from "../../store/store.ts";
import { groupKinds } from "./group-lines.ts";
import type { PatientGroup } from "./plan-group.ts";
import { type WardOf, withWard } from "./ward-names.ts";

/** How many groups are worked on in one short transaction. */
const groupsAtATime = 500;

/** Waiting lines of some groups, by what they are about. */
export interface WaitingChunk {
  readonly lastKey: string;
  readonly lineCount: number;
  readonly wards: readonly LineOf<"wards.csv">[];
  /** Descriptions of a ward under another name of it: the ward keeps its own. */
  readonly otherNames: readonly LineOf<"wards.csv">[];
  readonly patients: readonly PatientGroup[];
  readonly counts: readonly LineOf<"daily-counts.csv">[];
}

/** The next waiting groups after `after`, with the wards that their codes mean; null when none is left. */
export async function nextChunk(
  read: Read,
  importId: number,
  { after, wardOf }: { readonly after: string; readonly wardOf: WardOf },
): Promise<WaitingChunk | null> {
  const keys = await nextGroups(read, importId, after, groupsAtATime);
  const lastKey = keys.at(-1);
  if (lastKey === undefined) return null;
  const waiting = await waitingLines(read, importId, keys);
  const parsed = waiting.map((stored) => ({
    stored,
    line: withWard(JSON.parse(stored.content) as IntakeLine, wardOf),
  }));
  const lines = parsed.filter(({ stored }) => stored.state === "staged").map(({ line }) => line);
  const described = lines.filter((line) => line.file === "wards.csv");
  return {
    lastKey,
    lineCount: lines.length,
    wards: described.filter(({ values }) => wardOf(values.ward) === values.ward),
    otherNames: described.filter(({ values }) => wardOf(values.ward) !== values.ward),
    counts: lines.filter((line) => line.file === "daily-counts.csv"),
    patients: patientGroups(parsed),
  };
}

/** The lines of a person by the record that they are made for. A catheter goes with the record of its stay, and
 * so does a review. */
function patientGroups(parsed: readonly { stored: WaitingLine; line: IntakeLine }[]): PatientGroup[] {
  const patients = parsed.flatMap(({ stored, line }) => (isOfPatient(line) ? [{ stored, line }] : []));
  const ofStay = new Map<string, string>();
  for (const { line } of patients) if ("patient" in line.values) ofStay.set(line.values.stay, line.values.patient);
  const groups = new Map<string, { identifier: string | null; lines: PatientLine[]; seen: PatientLine[] }>();
  for (const { stored, line } of patients) {
    const identifier = ofStay.get(line.values.stay) ?? patientOf(stored.groupKey);
    const key = JSON.stringify([stored.groupKey, identifier]);
    const group = groups.get(key) ?? { identifier, lines: [], seen: [] };
    groups.set(key, group);
    (stored.state === "staged" ? group.lines : group.seen).push(line);
  }
  return [...groups.values()];
}

/** Every review has its stay by now: one without was refused when it was read. */
function isOfPatient(line: IntakeLine): line is PatientLine {
  return line.file !== "wards.csv" && line.file !== "daily-counts.csv" && line.values.stay !== null;
}

function patientOf(groupKey: string): string | null {
  return groupKey.startsWith(groupKinds.patient) ? groupKey.slice(groupKinds.patient.length) : null;
}

/** The wards that the lines of a chunk name, whether or not anybody described them. */
export function wardsNamed(chunk: WaitingChunk): string[] {
  const moves = chunk.patients.flatMap((group) =>
    group.lines.flatMap((line) => (line.file === "moves.csv" ? [line.values.ward] : [])),
  );
  return [...new Set([...moves, ...chunk.counts.map((line) => line.values.ward)])];
}
