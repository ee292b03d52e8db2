import type { AuditAction } from "../../shared/audit-words.ts";
import { patientsWithCultures } from "../store/culture-records.ts";
import { lockPatients, type Recording } from "../store/patients.ts";
import type { Tx } from "../store/store.ts";
import { patientsOfWard } from "../store/wards.ts";
import { determineAgain } from "./determine-again.ts";

/** How many patients are determined anew at a time. */
const chunkSize = 200;

/** Determines anew the cultures of everybody who was ever on a ward, after what it is watched by has changed. */
export async function determineWard(
  tx: Tx,
  by: Recording & { readonly reason?: string },
  { wardId, cause }: { readonly wardId: number; readonly cause: AuditAction },
): Promise<void> {
  const patients = await patientsWithCultures(tx, await patientsOfWard(tx, wardId));
  for (let i = 0; i < patients.length; i += chunkSize) {
    const patientIds = patients.slice(i, i + chunkSize);
    await lockPatients(tx, by.facilityId, patientIds);
    await determineAgain(tx, by, { patientIds, cause });
  }
}
