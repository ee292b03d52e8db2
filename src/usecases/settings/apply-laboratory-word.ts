import type { applyLaboratoryWord as endpoint } from "../../../shared/api/laboratory-words.ts";
import type { AuditAction } from "../../../shared/audit-words.ts";
import type { InputOf, OutputOf } from "../../../shared/endpoint.ts";
import { refuse } from "../../../shared/problems.ts";
import { type LaboratoryWord, plainWording } from "../../domain/cultures/laboratory-words.ts";
import { writeAudit } from "../../store/audit.ts";
import { lockFacility } from "../../store/facilities.ts";
import {
  addWord,
  pastProgress,
  patientsWithWording,
  setPastAfter,
  unfinishedWords,
  wordsOfFacility,
} from "../../store/laboratory-words.ts";
import { lockPatients, type Recording } from "../../store/patients.ts";
import type { Read, Tx } from "../../store/store.ts";
import { type Act, recording } from "../act.ts";
import { determineAgain } from "../cultures/determine-again.ts";

/** Patients of one transaction: it holds their rows while it determines them. */
const patientsAtOnce = 50;

type Applied = Pick<OutputOf<typeof endpoint>, "patients" | "changed"> & Pick<LaboratoryWord, "pastAfter">;

/**
 * Applies the choice for a wording to specimens of the past: determines the next patients who have it again, after those
 * who already were. The choice keeps how far it is, so that nothing is left out when no further call comes. Refuses
 * `not-found` for a wording without a choice.
 */
export function applyLaboratoryWord(
  act: Act,
  { column, wording: written }: InputOf<typeof endpoint>,
): Promise<OutputOf<typeof endpoint>> {
  const wording = plainWording(column, written);
  const work = async (tx: Tx) => {
    const by = recording(act);
    await lockFacility(tx, by.facilityId);
    const versions = await wordsOfFacility(tx, by.facilityId);
    const latest = versions.findLast((one) => one.column === column && one.wording === wording);
    if (!latest) return refuse("not-found", "There is no choice for this wording.", { pointer: "/wording" });
    const word = latest.isForPast ? latest : await begin(tx, by, latest);
    const { pastAfter, ...applied } = await applyNext(tx, by, { word, action: "apply-word" });
    return { ...applied, past: await pastProgress(tx, by.facilityId, { ...word, pastAfter }) };
  };
  return act.store.tx(work, { ids: 1 });
}

/** Applies to its end what was begun for past specimens of the facility and then left, in short transactions. */
export async function finishWords(act: Act): Promise<void> {
  const by = recording(act);
  const left = (read: Read) => unfinishedWords(read, by.facilityId);
  const work = async (tx: Tx) => {
    await lockFacility(tx, by.facilityId);
    const [word] = await left(tx);
    if (word) await applyNext(tx, by, { word, action: "determine-again" });
    return left(tx);
  };
  for (let words = await act.store.read(left); words.length > 0; ) words = await act.store.tx(work, { apart: true });
}

/** A further version of a choice that past specimens follow too. */
async function begin(tx: Tx, by: Recording, latest: LaboratoryWord): Promise<LaboratoryWord> {
  const word = { ...latest, number: latest.number + 1, isForPast: true, pastAfter: 0 };
  return { ...word, id: await addWord(tx, by, word) };
}

/** Determines the next patients of a choice again; those who come last leave it finished. */
async function applyNext(
  tx: Tx,
  by: Recording,
  { word, action }: { readonly word: LaboratoryWord; readonly action: AuditAction },
): Promise<Applied> {
  const { id: wordId, column, wording, pastAfter } = word;
  const asked = { column, wording, after: pastAfter ?? 0, count: patientsAtOnce };
  // Applied to its end already: only that someone asked is written down.
  const patientIds = pastAfter === null ? [] : await patientsWithWording(tx, by.facilityId, asked);
  await lockPatients(tx, by.facilityId, patientIds);
  const changed = await determineAgain(tx, by, { patientIds, cause: "apply-word" });
  const last = patientIds.length < patientsAtOnce ? null : (patientIds.at(-1) ?? null);
  await setPastAfter(tx, wordId, last);
  const applied = { patients: patientIds.length, changed: changed.length };
  await writeAudit(tx, by, { action, patientIds, details: { wordId, ...applied } });
  return { ...applied, pastAfter: last };
}
