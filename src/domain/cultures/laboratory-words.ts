import { type OrganismGroup, organismGroup } from "../../../shared/culture-words.ts";
import { type CountChoice, countChoices, type WordColumn, wordKey } from "../../../shared/laboratory-words.ts";
import { plainOrganismName } from "../../../shared/plain-organism-name.ts";
import { listedOrganisms, matchOrganism, type OrganismIdentity, type ReadCount, readCount } from "../criteria/index.ts";
import type { Instant } from "../days/day-number.ts";

/** What a facility chose for a wording that is not read by itself; versions follow one another and stay. */
export interface LaboratoryWord {
  readonly id: number;
  readonly column: WordColumn;
  /** In plain form: two spellings that differ in case, blanks or hyphens are one wording. */
  readonly wording: string;
  /** Counts the versions of a wording from 1. */
  readonly number: number;
  /** A group, the name of a listed organism, or a count choice; null: withdrawn, so that the wording waits again. */
  readonly choice: string | null;
  /** Specimens written down before this choice follow it too. */
  readonly isForPast: boolean;
  /** While past specimens are determined again, the last patient who was; null: none are left to determine. */
  readonly pastAfter: number | null;
  readonly recordedAt: Instant;
  readonly recordedBy: number;
}

/** The choices of a facility, as determinations ask for them. */
export interface LaboratoryWords {
  /** What a wording of a specimen that was written down then means; null: no one has chosen. */
  choiceOf(column: WordColumn, written: string, writtenAt: Instant): string | null;
}

/** Without any choice of a facility. */
export const noWords: LaboratoryWords = { choiceOf: () => null };

/** The choices by their versions: the last one made by then, or later and confirmed for past specimens. */
export function laboratoryWords(versions: readonly LaboratoryWord[]): LaboratoryWords {
  const byKey = new Map<string, LaboratoryWord[]>();
  for (const one of versions.toSorted((a, b) => b.number - a.number)) {
    const key = wordKey(one.column, one.wording);
    byKey.set(key, [...(byKey.get(key) ?? []), one]);
  }
  return {
    choiceOf(column, written, writtenAt) {
      const all = byKey.get(wordKey(column, plainWording(column, written))) ?? [];
      return all.find(({ isForPast, recordedAt }) => isForPast || recordedAt <= writtenAt)?.choice ?? null;
    },
  };
}

/** The form in which wordings of a column are compared. */
export function plainWording(column: WordColumn, written: string): string {
  return column === "organism" ? plainOrganismName(written) : written.trim().replace(/\s+/g, " ").toLowerCase();
}

/** Whether a wording is read without anybody choosing: it then needs no choice. */
export function isReadItself(column: WordColumn, written: string): boolean {
  if (column === "organism") return matchOrganism(written) !== null;
  const { kind } = readCount(written);
  return kind !== "unreadable" && kind !== "words";
}

/** What of a specimen is not read by itself, each wording once. */
export function openWordings(
  organisms: readonly { readonly name: string; readonly count: string | null }[],
): { readonly column: WordColumn; readonly wording: string }[] {
  const found = organisms.flatMap(({ name, count }) => [
    ...(isReadItself("organism", name)
      ? []
      : [{ column: "organism" as const, wording: plainWording("organism", name) }]),
    ...(count === null || isReadItself("count", count)
      ? []
      : [{ column: "count" as const, wording: plainWording("count", count) }]),
  ]);
  return [...new Map(found.map((one) => [wordKey(one.column, one.wording), one])).values()];
}

/** The organism that a choice stands for; null where the choice is none. */
export function chosenIdentity(choice: string, written: string): OrganismIdentity | null {
  const group = organismGroup.safeParse(choice);
  if (group.success) return identityIn(group.data, written);
  return listedOrganisms().find(({ key }) => key === choice) ?? null;
}

function identityIn(group: OrganismGroup, written: string): OrganismIdentity {
  return { key: plainOrganismName(written), group, genus: null };
}

/** The count that a choice stands for. */
export function chosenCount(choice: string, written: string): ReadCount {
  if (choice === "at-least-100000") return { kind: "bound", relation: ">=", cfuPerMl: 100_000 };
  return choice === "below-100000"
    ? { kind: "bound", relation: "<", cfuPerMl: 100_000 }
    : { kind: "unreadable", text: written };
}

/** Whether a choice is one that this column can have. */
export function isChoice(column: WordColumn, choice: string): boolean {
  if (column === "count") return Object.hasOwn(countChoices satisfies Record<CountChoice, string>, choice);
  return chosenIdentity(choice, "") !== null;
}
