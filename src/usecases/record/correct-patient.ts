import type { correctPatient as endpoint } from "../../../shared/api/patients.ts";
import type { InputOf } from "../../../shared/endpoint.ts";
import { Problem } from "../../../shared/problems.ts";
import { dayNumber, dayText } from "../../domain/days/day-number.ts";
import { writeAudit } from "../../store/audit.ts";
import { findPatient, lockPatient, type PatientRow } from "../../store/patients.ts";
import { replacePatient } from "../../store/replace-patient.ts";
import { type Act, recording } from "../act.ts";
import { determineAgain } from "../cultures/determine-again.ts";
import { refuseUnborn } from "./refuse-unborn.ts";

type Correction = InputOf<typeof endpoint>;

/**
 * Corrects the day of birth or the sex of a patient; what the record said is kept. Rules of age decide by the day of birth,
 * so the patient's cultures are determined anew in the same transaction.
 * Refuses `stale-version` with what the record says by now when that is not what the person saw, and `in-the-future`.
 */
export function correctPatient(act: Act, input: Correction): Promise<{ patientId: number }> {
  const { patientId, sex, seen, reason } = input;
  const birthDay = input.birthDay === null ? null : dayNumber(input.birthDay);
  return act.store.tx(async (tx) => {
    const by = { ...recording(act), reason };
    const survivor = await lockPatient(tx, by.facilityId, { patientId });
    const old = await findPatient(tx, by.facilityId, { patientId });
    refuseUnseen(old, seen);
    await refuseUnborn(tx, by, birthDay);
    await replacePatient(tx, by, { old, now: { birthDay, sex } });
    await determineAgain(tx, by, { patientIds: [survivor.id], cause: "correct-patient" });
    await writeAudit(tx, by, { action: "correct-patient", patientIds: [survivor.id], details: { patientId, reason } });
    return { patientId };
  });
}

function refuseUnseen(old: PatientRow, seen: Correction["seen"]): void {
  const current = { birthDay: old.birthDay === null ? null : dayText(old.birthDay), sex: old.sex };
  if (current.birthDay === seen.birthDay && current.sex === seen.sex) return;
  const problem = new Problem({
    code: "stale-version",
    pointer: "/seen",
    detail: "Another person corrected this record since.",
  });
  problem.current = current;
  throw problem;
}
