import type { RecordKind } from "../../../shared/endpoint.ts";
import { refuse } from "../../../shared/problems.ts";
import type { Instant } from "../../domain/days/day-number.ts";
import type { PatientKey } from "../../store/patient-of-entry.ts";
import { findPatient } from "../../store/patients.ts";
import { patientsInReach } from "../../store/patients-in-reach.ts";
import type { Act } from "../act.ts";
import type { Reach } from "../reach.ts";

/**
 * How long a ward may still see and complete the record of a patient who left it: what happened on the ward is often
 * written down after the patient has gone. Common practice.
 */
const lateChartingMs = 72 * 3_600_000;

/** The instant since which a patient must have been on a ward for its people to see the record. */
export function inReachSince(now: Instant): Instant {
  return now - lateChartingMs;
}

const keys: Readonly<Record<RecordKind, (id: number) => PatientKey>> = {
  patient: (patientId) => ({ patientId }),
  stay: (stayId) => ({ stayId }),
  "ward-stay": (wardStayId) => ({ wardStayId }),
  catheter: (catheterId) => ({ catheterId }),
  note: (noteId) => ({ noteId }),
  specimen: (specimenId) => ({ specimenId }),
  sign: (signId) => ({ signId }),
  finding: (findingId) => ({ findingId }),
  case: (caseId) => ({ caseId }),
};

/**
 * Refuses `not-found` for a record outside the reach, of another facility, or that was never there: all alike, so that
 * nobody learns which records exist. People of a ward reach the patients who are on it, and for some time those who left.
 */
export async function findRecord(act: Act, record: { kind: RecordKind; id: number }, reach: Reach): Promise<void> {
  const { store, actor, now } = act;
  await store.read(async (read) => {
    const patient = await findPatient(read, actor.facilityId, keys[record.kind](record.id));
    if (reach.wardIds === undefined) return;
    const { survivorId } = patient;
    const found = await patientsInReach(read, actor.facilityId, {
      patientIds: [survivorId],
      wardIds: reach.wardIds,
      since: inReachSince(now),
    });
    if (!found.includes(survivorId)) refuse("not-found", "There is no such record in this facility.");
  });
}
