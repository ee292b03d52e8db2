import type { findPatients as endpoint } from "../../../shared/api/patients.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { dayText } from "../../domain/days/day-number.ts";
import { type PatientRow, patientsByIdentifier } from "../../store/patients.ts";
import { patientsInReach } from "../../store/patients-in-reach.ts";
import type { Act } from "../act.ts";
import type { Reach } from "../reach.ts";
import { view } from "../view.ts";
import { inReachSince } from "./find-record.ts";

type Found = OutputOf<typeof endpoint>;

/**
 * The patient of that hospital number, when within reach; none otherwise, so that nobody learns who is here. That
 * somebody looked is recorded.
 */
export function findPatients(act: Act, input: { identifier: string }, { wardIds }: Reach): Promise<Found> {
  const { facilityId } = act.actor;
  return view(act, async (read, seen) => {
    const named = [...(await patientsByIdentifier(read, facilityId, [input.identifier])).values()];
    const patientIds = named.map((patient) => patient.survivorId);
    const reached =
      wardIds === undefined
        ? patientIds
        : await patientsInReach(read, facilityId, { patientIds, wardIds, since: inReachSince(act.now) });
    const found = named.filter((patient) => reached.includes(patient.survivorId));
    seen({
      action: "find-patients",
      patientIds: found.map((patient) => patient.id),
      details: { found: found.length },
    });
    return { patients: found.map(patientAnswer) };
  });
}

/** A patient as answered. */
export function patientAnswer({ id, identifier, birthDay, sex }: PatientRow): Found["patients"][0] {
  return { patientId: id, identifier, birthDay: birthDay === null ? null : dayText(birthDay), sex };
}
