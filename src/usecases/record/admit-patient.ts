import { refuse } from "../../../shared/problems.ts";
import type { DayNumber, Instant } from "../../domain/days/day-number.ts";
import { admit } from "../../domain/timeline/admit.ts";
import type { Mark } from "../../domain/timeline/timeline.ts";
import { ensurePatient } from "../../store/patients.ts";
import { stayNumberTaken } from "../../store/stays.ts";
import { type Act, notInFuture, recording } from "../act.ts";
import { openWard } from "../wards/open-ward.ts";
import { changePatientIn } from "./change-patient.ts";
import { refuseUnborn } from "./refuse-unborn.ts";

export interface AdmitPatient {
  readonly patient: { identifier: string; birthDay?: DayNumber | null; sex?: string | null };
  /** The number of the stay in the hospital's system. */
  readonly number: string;
  readonly admittedAt: Instant;
  readonly wardId: number;
  readonly bed?: string | null;
  readonly marks?: readonly Mark[];
}

/**
 * Admits a patient, known or new, to a ward.
 * Refuses `stay-overlaps`, `stay-number-taken`, `in-the-future`, `not-found` (ward), `ward-closed`.
 */
export async function admitPatient(
  act: Act,
  input: AdmitPatient,
): Promise<{ patientId: number; stayId: number; wardStayId: number; version: number }> {
  notInFuture(act.now, { admittedAt: input.admittedAt });
  const { facilityId } = act.actor;
  return act.store.tx(async (tx) => {
    const { identifier, birthDay = null, sex = null } = input.patient;
    await refuseUnborn(tx, recording(act), birthDay);
    const patientId = await ensurePatient(tx, recording(act), { id: tx.newId(), identifier, birthDay, sex });
    return changePatientIn(tx, act, {
      action: "admit-patient",
      key: { patientId },
      details: { wardId: input.wardId },
      first: async () => {
        await openWard(tx, facilityId, { wardId: input.wardId, at: input.admittedAt });
        const other = await stayNumberTaken(tx, facilityId, input.number);
        if (other !== null)
          refuse("stay-number-taken", "Another stay has this number.", { pointer: "/number", other: `stay ${other}` });
      },
      decide: (timeline, newId) => {
        const { number, admittedAt, wardId, bed = null, marks = [] } = input;
        const ids = { stayId: newId(), wardStayId: newId(), patientId };
        return {
          timeline: admit(timeline, { ...ids, number, admittedAt, wardId, bed, marks }),
          answer: { ...ids, version: 1 },
        };
      },
    });
  });
}
