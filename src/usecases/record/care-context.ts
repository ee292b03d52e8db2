import type { PolicyBody } from "../../../shared/policy.ts";
import type { Instant } from "../../domain/days/day-number.ts";
import { type Zone, zoneNamed } from "../../domain/days/zone.ts";
import type { Stay } from "../../domain/timeline/timeline.ts";
import { wardAt } from "../../domain/timeline/write-note.ts";
import { facility } from "../../store/facilities.ts";
import type { PatientKey } from "../../store/patient-of-entry.ts";
import { findPatient } from "../../store/patients.ts";
import type { Read } from "../../store/store.ts";
import { loadPolicies } from "../settings/load-policy.ts";

/** What judging a patient's care needs to know beside the record. */
export interface CareContext {
  readonly zone: Zone;
  /** The policy in force where the patient was at that instant. */
  policyAt(stay: Stay, at: Instant): PolicyBody;
  /** The patient's age in days; null when the day of birth is not known. */
  ageDays(at: Instant): number | null;
}

/** Loads the context of a patient. Refuses `not-found`. */
export async function careContext(read: Read, facilityId: number, key: PatientKey): Promise<CareContext> {
  const { birthDay } = await findPatient(read, facilityId, key);
  const zone = zoneNamed((await facility(read, facilityId)).zone);
  const policyOn = await loadPolicies(read, facilityId);
  return {
    zone,
    policyAt: (stay, at) => policyOn(wardAt(stay, at), zone.dayOf(at)).body,
    ageDays: (at) => (birthDay === null ? null : Math.max(0, zone.dayOf(at) - birthDay)),
  };
}
