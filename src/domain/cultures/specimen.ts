import type { OrganismGroup, SpecimenKind, SpecimenMethod, SpecimenStatus } from "../../../shared/culture-words.ts";
import { chosenOrganism, matchOrganism, type OrganismIdentity, type ReadCount, readCount } from "../criteria/index.ts";
import type { Instant } from "../days/day-number.ts";
import { type Entry, type Mark, markedAnew, newEntry, revise } from "../timeline/timeline.ts";
import { chosenCount, chosenIdentity, type LaboratoryWords, noWords } from "./laboratory-words.ts";

/** An organism as the laboratory wrote it. What it is and how much grew is read from it whenever it is needed. */
export interface RecordedOrganism {
  readonly id: number;
  readonly name: string;
  /** What somebody chose for a name that is not on the list; null where nobody chose. */
  readonly group: OrganismGroup | null;
  /** The count as it was written; null where none was given. */
  readonly count: string | null;
}

/** A specimen of a patient's record, with what the laboratory found. */
export interface RecordedSpecimen extends Entry {
  /** The patient it was recorded for, also after a merge. */
  readonly patientId: number;
  readonly kind: SpecimenKind;
  readonly collectedAt: Instant;
  readonly method: SpecimenMethod;
  readonly status: SpecimenStatus;
  /** The laboratory's number. */
  readonly number: string | null;
  readonly organisms: readonly RecordedOrganism[];
  /** When it was first written down, and by whom. */
  readonly writtenAt: Instant;
  readonly writtenBy: number;
}

/** An organism as somebody gives it. */
export interface GivenOrganism {
  readonly name: string;
  readonly group?: OrganismGroup | undefined;
  readonly count?: string | undefined;
}

/** What a new specimen says. */
export type SpecimenText = Pick<RecordedSpecimen, "kind" | "collectedAt" | "method" | "status"> & {
  readonly number?: string | null | undefined;
  readonly organisms: readonly GivenOrganism[];
  readonly marks?: readonly Mark[] | undefined;
};

/** What a correction changes. Organisms are given anew, all of them. */
export type SpecimenChanges = Partial<
  Pick<RecordedSpecimen, "kind" | "collectedAt" | "method" | "status" | "number"> & {
    readonly organisms: readonly GivenOrganism[];
  }
>;

/** A new specimen. */
export function newSpecimen(
  writing: Pick<RecordedSpecimen, "id" | "patientId" | "writtenAt" | "writtenBy">,
  { number = null, organisms, marks = [], kind, collectedAt, method, status }: SpecimenText,
  newId: () => number,
): RecordedSpecimen {
  const grown = recordedOrganisms(organisms, newId);
  return { ...newEntry, ...writing, kind, collectedAt, method, status, number, organisms: grown, marks };
}

/** A specimen with changes; `marks` are those of its new time. */
export function correctSpecimen(
  specimen: RecordedSpecimen,
  { organisms, ...changes }: SpecimenChanges,
  { newId, marks }: { newId: () => number; marks: readonly Mark[] },
): RecordedSpecimen {
  const grown = organisms === undefined ? {} : { organisms: recordedOrganisms(organisms, newId) };
  return revise(specimen, { ...changes, ...grown, marks: markedAnew(specimen, changes, marks) });
}

function recordedOrganisms(given: readonly GivenOrganism[], newId: () => number): RecordedOrganism[] {
  return given.map(({ name, group = null, count = null }) => ({ id: newId(), name, group, count }));
}

/** The choices of the facility for its laboratory's wordings, and when the specimen was written down. */
export interface WordsThen {
  readonly words: LaboratoryWords;
  readonly writtenAt: Instant;
}

/**
 * What an organism is: by the list, or else by the group chosen for it, or else by what the facility chose for its
 * wording, or else not known. The list goes first, so that a name that joins it later is read as what it is.
 */
export function identityOf(
  { name, group }: Pick<RecordedOrganism, "name" | "group">,
  then: WordsThen | null = null,
): OrganismIdentity {
  const known = matchOrganism(name);
  if (known) return known;
  if (group !== null) return chosenOrganism(name, group);
  const choice = then?.words.choiceOf("organism", name, then.writtenAt) ?? null;
  const chosen = choice === null ? null : chosenIdentity(choice, name);
  return chosen ?? { key: name, group: null, genus: null };
}

/** How much grew: as it is read, or by what the facility chose for a wording that is not read as a number. */
export function countOf({ count }: Pick<RecordedOrganism, "count">, then: WordsThen | null = null): ReadCount {
  const read = readCount(count);
  if (count === null || (read.kind !== "words" && read.kind !== "unreadable")) return read;
  const choice = then?.words.choiceOf("count", count, then.writtenAt) ?? null;
  return choice === null ? read : chosenCount(choice, count);
}

/**
 * What of a specimen waits for a person, as pointers into it: a name that is not on the list and has no group, a count
 * that cannot be read. Both are kept as they were written and decide nothing until then.
 */
export function setAsideIn(
  { organisms, writtenAt }: Pick<RecordedSpecimen, "organisms" | "writtenAt">,
  words: LaboratoryWords = noWords,
): string[] {
  const then = { words, writtenAt };
  return organisms.flatMap((organism, i) => [
    ...(identityOf(organism, then).group === null ? [`/organisms/${i}/name`] : []),
    ...(countOf(organism, then).kind === "unreadable" ? [`/organisms/${i}/count`] : []),
  ]);
}
