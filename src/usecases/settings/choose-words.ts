import type { chooseLaboratoryWords as choose } from "../../../shared/api/laboratory-words.ts";
import type { InputOf, OutputOf } from "../../../shared/endpoint.ts";
import { type WordColumn, wordKey } from "../../../shared/laboratory-words.ts";
import type { Fault } from "../../../shared/problems.ts";
import { matchOrganism } from "../../domain/criteria/index.ts";
import {
  chosenIdentity,
  isChoice,
  isReadItself,
  type LaboratoryWord,
  plainWording,
} from "../../domain/cultures/laboratory-words.ts";
import { writeAudit } from "../../store/audit.ts";
import { lockFacility } from "../../store/facilities.ts";
import { addWord, wordsOfFacility } from "../../store/laboratory-words.ts";
import { type Act, recording } from "../act.ts";
import { refuseFaults } from "../cultures/change-culture.ts";

type Given = InputOf<typeof choose>["words"][number];

/**
 * Stores what wordings mean for specimens written down from now on: all of the table, or nothing. What the list reads
 * alike, and what is chosen so already, stores nothing. Refuses `word-repeated`, `word-chosen-twice`,
 * `word-read-already` and `word-choice-unknown`, all faults at once.
 */
export function chooseLaboratoryWords(act: Act, { words }: InputOf<typeof choose>): Promise<OutputOf<typeof choose>> {
  const work = async (tx: Parameters<Parameters<typeof act.store.tx>[0]>[0]) => {
    const by = recording(act);
    await lockFacility(tx, by.facilityId);
    const latest = latestOf(await wordsOfFacility(tx, by.facilityId));
    const current = (one: Given) => latest.get(keyOf(one));
    refuseFaults([...repeated(words), ...words.flatMap((one, i) => faultsOf(one, i, current(one)))]);
    const news = words.filter((one) => !isReadAlike(one) && (current(one)?.choice ?? null) !== one.choice);
    const wordIds: number[] = [];
    for (const one of news) {
      const { column, choice } = one;
      const wording = plainWording(column, one.wording);
      const number = (current(one)?.number ?? 0) + 1;
      wordIds.push(await addWord(tx, by, { column, wording, number, choice, isForPast: false, pastAfter: null }));
    }
    // The wording itself stays out of the trail: a laboratory may write a name into it.
    if (wordIds.length > 0) await writeAudit(tx, by, { action: "choose-words", details: { wordIds } });
    return { stored: news.length };
  };
  return act.store.tx(work, { ids: words.length });
}

/** Determinations follow the last version of each wording. */
function latestOf(versions: readonly LaboratoryWord[]): ReadonlyMap<string, LaboratoryWord> {
  return new Map(versions.map((one) => [wordKey(one.column, one.wording), one]));
}

function keyOf({ column, wording }: { readonly column: WordColumn; readonly wording: string }): string {
  return wordKey(column, plainWording(column, wording));
}

function repeated(words: readonly Given[]): Fault[] {
  const first = new Map<string, Given>();
  return words.flatMap((one, i): Fault[] => {
    const before = first.get(keyOf(one));
    first.set(keyOf(one), before ?? one);
    if (before === undefined) return [];
    const pointer = `/words/${i}/wording`;
    return before.choice === one.choice
      ? [{ code: "word-repeated", pointer, detail: "The table has this wording in an earlier row." }]
      : [{ code: "word-chosen-twice", pointer, detail: "An earlier row of the table has another choice for it." }];
  });
}

function faultsOf(one: Given, i: number, current: LaboratoryWord | undefined): Fault[] {
  const { column, wording, choice, replaces } = one;
  if (choice !== null && !isChoice(column, choice)) {
    const detail = "This is not a group, a listed organism or a count choice.";
    return [{ code: "word-choice-unknown", pointer: `/words/${i}/choice`, detail }];
  }
  if (isReadItself(column, wording) && !isReadAlike(one)) {
    const detail = "The built-in list already reads this wording, with another meaning.";
    return [{ code: "word-read-already", pointer: `/words/${i}/wording`, detail }];
  }
  const isOther = current !== undefined && current.choice !== choice;
  const isSeen = replaces === (current?.number ?? 0);
  if (replaces === undefined ? !isOther : isSeen || !isOther) return [];
  const detail = "The facility has another choice for this wording. Look at it before you change it.";
  return [{ code: "word-chosen-twice", pointer: `/words/${i}/wording`, detail }];
}

/** Whether the list reads a wording as what is chosen for it. */
function isReadAlike({ column, wording, choice }: Given): boolean {
  if (column === "count" || choice === null) return false;
  const known = matchOrganism(wording);
  if (!known) return false;
  return known.group === choice || known.key === chosenIdentity(choice, wording)?.key;
}
