import type { FindingKind } from "../../../shared/case-words.ts";
import type { Fault } from "../../../shared/problems.ts";
import type { DayNumber, Instant } from "../days/day-number.ts";
import { type Entry, newEntry, revise } from "../timeline/timeline.ts";

/** What was found of a patient beside cultures and signs. */
export interface RecordedFinding extends Entry {
  /** The patient it was recorded for, also after a merge. */
  readonly patientId: number;
  readonly finding: FindingKind;
  readonly day: DayNumber;
  /** The instant on that day; null where nobody knows the hour. */
  readonly at: Instant | null;
  /** Somebody looked for it: it was so, or it was not. */
  readonly present: boolean;
  /** White blood cells per mm³, of pyuria alone. */
  readonly cellsPerMm3: number | null;
  /** When it was first written down, and by whom. */
  readonly writtenAt: Instant;
  readonly writtenBy: number;
}

type Writing = Pick<RecordedFinding, "id" | "patientId" | "writtenAt" | "writtenBy">;

/** What a new finding says. */
export type FindingText = Pick<RecordedFinding, "finding" | "day" | "at" | "present" | "cellsPerMm3" | "marks">;

/** A new finding. */
export function newFinding(writing: Writing, text: FindingText): RecordedFinding {
  return { ...newEntry, ...text, ...writing };
}

/** A finding with changes. */
export function correctFinding(finding: RecordedFinding, changes: Partial<FindingText>): RecordedFinding {
  return revise(finding, changes);
}

/** From this many white blood cells per mm³ on they are pyuria: older CDC/RKI criterion D1. */
const pyuriaFrom = 10;

/** `finding-contradicts`: cells of something other than pyuria, or a number that says the opposite of `present`. */
export function findingFaults({
  finding,
  present,
  cellsPerMm3,
}: Pick<RecordedFinding, "finding" | "present" | "cellsPerMm3">): Fault[] {
  if (cellsPerMm3 === null) return [];
  const fault = (detail: string): Fault[] => [{ code: "finding-contradicts", pointer: "/cellsPerMm3", detail }];
  if (finding !== "pyuria") return fault("Only white blood cells in urine have a number of cells.");
  if (cellsPerMm3 >= pyuriaFrom === present) return [];
  return fault(`${pyuriaFrom} or more per mm³ are found; fewer are not.`);
}
