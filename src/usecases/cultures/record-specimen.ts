import { newSpecimen, type SpecimenText, setAsideIn } from "../../domain/cultures/specimen.ts";
import { growthFaults, resultFaults } from "../../domain/cultures/specimen-faults.ts";
import { writeAudit } from "../../store/audit.ts";
import { lockPatient } from "../../store/patients.ts";
import { addSpecimens } from "../../store/specimens.ts";
import type { Tx } from "../../store/store.ts";
import { type Act, notInFuture, recording } from "../act.ts";
import { daysOfPatient, refuseFaults } from "./change-culture.ts";
import { determineAgain } from "./determine-again.ts";

/** What a specimen was stored as, and what of it waits for a person, as pointers. */
export interface SpecimenStored {
  readonly specimenId: number;
  readonly version: number;
  readonly setAside: string[];
}

/**
 * Records a specimen of urine or blood with what the laboratory found so far. An unreadable count and a name that is not
 * on the list are kept as they were written and set aside.
 * Refuses, all faults at once: `in-the-future`, `outside-surveillance-days`, `result-contradicts`, `too-many-organisms`,
 * `organism-group-contradicts`, `organism-missing`; and `not-found`.
 */
export function recordSpecimen(
  act: Act,
  input: SpecimenText & { readonly patientId: number },
): Promise<SpecimenStored> {
  const { patientId, ...text } = input;
  notInFuture(act.now, { collectedAt: text.collectedAt });
  const work = async (tx: Tx) => {
    const by = recording(act);
    const { id: survivorId } = await lockPatient(tx, by.facilityId, { patientId });
    const writing = { id: tx.newId(), patientId, writtenAt: by.now, writtenBy: by.personId };
    const specimen = newSpecimen(writing, text, () => tx.newId());
    const days = await daysOfPatient(tx, { facilityId: by.facilityId, survivorId, now: by.now });
    const day = days.zone.dayOf(specimen.collectedAt);
    const placed = days.faultsOf(Math.min(day, days.today), "/collectedAt");
    refuseFaults([...placed, ...resultFaults(specimen), ...growthFaults(specimen)]);
    await addSpecimens(tx, [specimen]);
    await determineAgain(tx, by, { patientIds: [survivorId], cause: "record-specimen" });
    const { id: specimenId, kind, status, version } = specimen;
    const details = { specimenId, kind, status, organisms: specimen.organisms.length };
    await writeAudit(tx, by, { action: "record-specimen", patientIds: [survivorId], details });
    return { specimenId, version, setAside: setAsideIn(specimen, days.words) };
  };
  return act.store.tx(work, { ids: text.organisms.length + 1 });
}
