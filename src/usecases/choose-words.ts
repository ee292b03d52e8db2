import type { applyLaboratoryWord, chooseLaboratoryWords as choose } from "../../shared/api/laboratory-words.ts";
import type { InputOf, OutputOf } from "../../shared/endpoint.ts";
import { type WordColumn, wordKey } from "../../shared/laboratory-words.ts";
import { type Fault, refuse } from "../../shared/problems.ts";
import { matchOrganism } from "../domain/criteria/index.ts";
import {
  chosenIdentity,
  isChoice,
  isReadItself,
  type LaboratoryWord,
  plainWording,
} from "../domain/cultures/laboratory-words.ts";
import { writeAudit } from "../store/audit.ts";
import { lockFacility } from "../store/facilities.ts";
import { addWord, patientsWithWording, wordsOfFacility } from "../store/laboratory-words.ts";
import { lockPatients } from "../store/patients.ts";
import { type Act, recording } from "./act.ts";
import { refuseFaults } from "./change-culture.ts";
import { determineAgain } from "./determine-again.ts";

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
      wordIds.push(await addWord(tx, by, { column, wording, number, choice, isForPast: false }));
    }
    // The wording itself stays out of the trail: a laboratory may write a name into it.
    if (wordIds.length > 0) await writeAudit(tx, by, { action: "choose-words", details: { wordIds } });
    return { stored: news.length };
  };
  return act.store.tx(work, { ids: words.length });
}

/** Patients of one call: a transaction holds their rows while it determines them. */
const patientsAtOnce = 50;

/**
 * Applies the choice for a wording to specimens of the past, and determines the next patients who have it again, in one
 * transaction. Begun again, it goes through them again. Refuses `not-found` for a wording without a choice.
 */
export function applyWord(
  act: Act,
  { column, wording: written, after }: InputOf<typeof applyLaboratoryWord>,
): Promise<OutputOf<typeof applyLaboratoryWord>> {
  const wording = plainWording(column, written);
  const work = async (tx: Parameters<Parameters<typeof act.store.tx>[0]>[0]) => {
    const by = recording(act);
    const { facilityId } = by;
    await lockFacility(tx, facilityId);
    const latest = latestOf(await wordsOfFacility(tx, facilityId)).get(wordKey(column, wording));
    if (!latest) return refuse("not-found", "There is no choice for this wording.", { pointer: "/wording" });
    const { choice, number } = latest;
    if (!latest.isForPast) await addWord(tx, by, { column, wording, choice, number: number + 1, isForPast: true });
    const patientIds = await patientsWithWording(tx, facilityId, { column, wording, after, count: patientsAtOnce });
    await lockPatients(tx, facilityId, patientIds);
    const changed = await determineAgain(tx, by, { patientIds, cause: "apply-word" });
    const details = { wordId: latest.id, patients: patientIds.length, changed: changed.length };
    await writeAudit(tx, by, { action: "apply-word", patientIds, details });
    const isLast = patientIds.length < patientsAtOnce;
    return { after: isLast ? null : (patientIds.at(-1) ?? null), patients: patientIds.length, changed: changed.length };
  };
  return act.store.tx(work, { ids: 1 });
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
