import { z } from "zod";
import { specimenState } from "../../../shared/api/culture-entries.ts";
import { laboratoryWords, noWords } from "../../domain/cultures/laboratory-words.ts";
import {
  correctSpecimen as decide,
  type RecordedSpecimen,
  type SpecimenChanges,
  setAsideIn,
} from "../../domain/cultures/specimen.ts";
import { growthFaults, resultFaults } from "../../domain/cultures/specimen-faults.ts";
import { type Mark, revise } from "../../domain/timeline/timeline.ts";
import { wordsOfFacility } from "../../store/laboratory-words.ts";
import { replaceSpecimen, specimenOf } from "../../store/specimens.ts";
import { type Act, notInFuture } from "../act.ts";
import { type CultureChange, type CultureKind, changeCulture, refuseFaults } from "./change-culture.ts";
import { specimenAnswer } from "./culture-answers.ts";
import type { SpecimenStored } from "./record-specimen.ts";

const specimens: CultureKind<RecordedSpecimen> = {
  name: "specimen",
  key: (specimenId) => ({ specimenId }),
  load: specimenOf,
  replace: replaceSpecimen,
  current: (specimen) => z.encode(specimenState, specimenAnswer(specimen)),
};

/** A change of a specimen. */
export type SpecimenChange = Omit<CultureChange, "id"> & { readonly specimenId: number };

/**
 * Corrects a specimen: a further report, a result that was withdrawn, a slip. Organisms are given anew, all of them. What
 * was not changed is not judged again: stays may be others by now.
 * Refuses `stale-version`, `entry-voided`, and what a new specimen is refused for.
 */
export async function correctSpecimen(
  act: Act,
  input: SpecimenChange & { readonly changes: SpecimenChanges; readonly marks?: readonly Mark[] },
): Promise<SpecimenStored> {
  const { specimenId, changes, marks = [] } = input;
  notInFuture(act.now, { collectedAt: changes.collectedAt });
  let words = noWords;
  const { version, now } = await changeCulture(
    act,
    { ...input, id: specimenId },
    {
      kind: specimens,
      action: "correct-specimen",
      ids: changes.organisms?.length ?? 0,
      decide: async (tx, old, daysOf) => {
        words = laboratoryWords(await wordsOfFacility(tx, act.actor.facilityId));
        const specimen = decide(old, changes, { newId: () => tx.newId(), marks });
        const days = changes.collectedAt === undefined ? null : await daysOf();
        const day = days === null ? 0 : Math.min(days.zone.dayOf(specimen.collectedAt), days.today);
        const judged = changes.organisms !== undefined || changes.status !== undefined;
        refuseFaults([
          ...(days?.faultsOf(day, "/collectedAt") ?? []),
          ...(judged ? [...resultFaults(specimen), ...growthFaults(specimen)] : []),
        ]);
        return specimen;
      },
    },
  );
  return { specimenId, version, setAside: setAsideIn(now, words) };
}

/** Voids a specimen that was recorded in error; it stays readable and decides nothing. Refuses `stale-version`, `entry-voided`. */
export async function voidSpecimen(act: Act, input: SpecimenChange): Promise<{ specimenId: number; version: number }> {
  const { specimenId, reason } = input;
  const { version } = await changeCulture(
    act,
    { ...input, id: specimenId },
    {
      kind: specimens,
      action: "void-specimen",
      decide: async (_tx, old) => revise(old, { voidReason: reason }),
    },
  );
  return { specimenId, version };
}
