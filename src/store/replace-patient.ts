import { dayText } from "../domain/days/day-number.ts";
import { keepVersions } from "./entry-versions.ts";
import type { PatientRow, Recording } from "./patients.ts";
import type { Tx } from "./store.ts";

/** Puts away what a patient's record said of birth and sex, and stores what it says now. */
export async function replacePatient(
  tx: Tx,
  by: Recording & { reason: string },
  { old, now }: { old: PatientRow; now: Pick<PatientRow, "birthDay" | "sex"> },
): Promise<void> {
  const { id, version, birthDay, sex } = old;
  await keepVersions(tx, by, [
    { kind: "patient", id, version, body: { birthDay: birthDay === null ? null : dayText(birthDay), sex } },
  ]);
  await tx.db.patient.update({ where: { id }, data: { ...now, version: version + 1 } });
}
