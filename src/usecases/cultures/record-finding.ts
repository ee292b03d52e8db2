import type { FindingKind } from "../../../shared/case-words.ts";
import { findingFaults, newFinding } from "../../domain/cultures/finding.ts";
import type { DayNumber } from "../../domain/days/day-number.ts";
import { writeAudit } from "../../store/audit.ts";
import { addFinding } from "../../store/findings.ts";
import { lockPatient } from "../../store/patients.ts";
import { type Act, recording } from "../act.ts";
import { daysOfPatient, refuseFaults } from "./change-culture.ts";
import { determineAgain } from "./determine-again.ts";
import { momentOf } from "./given-signs.ts";

export interface RecordFinding {
  readonly patientId: number;
  readonly finding: FindingKind;
  readonly day: DayNumber;
  /** `HH:MM`; left out where nobody knows the hour. */
  readonly time?: string | undefined;
  readonly present: boolean;
  readonly cellsPerMm3?: number | undefined;
}

/**
 * Records what was found beside cultures and signs: evidence in urine, a death, support for organ donation.
 * Refuses, all faults at once: `in-the-future`, `outside-surveillance-days`, `time-does-not-exist`,
 * `finding-contradicts`; and `not-found`.
 */
export function recordFinding(act: Act, input: RecordFinding): Promise<{ findingId: number; version: number }> {
  const { patientId, finding, day, time = null, present, cellsPerMm3 = null } = input;
  const by = recording(act);
  return act.store.tx(async (tx) => {
    const { id: survivorId } = await lockPatient(tx, by.facilityId, { patientId });
    const days = await daysOfPatient(tx, { facilityId: by.facilityId, survivorId, now: by.now });
    // A day that has not come is told as such once, and not again for its hour.
    const when = { day, time: day > days.today ? null : time };
    const { at, marks, faults } = momentOf(when, { zone: days.zone, now: by.now, pointer: "/time" });
    const writing = { id: tx.newId(), patientId, writtenAt: by.now, writtenBy: by.personId };
    const one = newFinding(writing, { finding, day, at, present, cellsPerMm3, marks });
    refuseFaults([...days.faultsOf(day, "/day"), ...faults, ...findingFaults(one)]);
    await addFinding(tx, one);
    await determineAgain(tx, by, { patientIds: [survivorId], cause: "record-finding" });
    const details = { findingId: one.id, finding, present };
    await writeAudit(tx, by, { action: "record-finding", patientIds: [survivorId], details });
    return { findingId: one.id, version: one.version };
  });
}
