import type { AuditAction } from "../../../shared/audit-words.ts";
import type { Month } from "../../../shared/day.ts";
import { monthDays } from "../../domain/days/month.ts";
import { longestWindowDays } from "../../domain/editions/index.ts";
import { patientsOnWardWithCultures } from "../../store/case-lists.ts";
import { lockPatients, type Recording } from "../../store/patients.ts";
import type { Tx } from "../../store/store.ts";
import { determineAgain } from "./determine-again.ts";

/** How many patients are determined again at a time. */
const chunkSize = 200;

/** Months of a ward's scope that change; `to` null: all from the first on. */
export interface ChangedMonths {
  readonly wardId: number;
  readonly from: Month;
  readonly to: Month | null;
}

/**
 * Determines again the cultures of everyone who was ever on a ward and has a culture whose date of event could lie in the
 * months in which its scope has changed. The cost is that of the cultures of these months, not of the ward's history.
 */
export async function determineWard(
  tx: Tx,
  by: Recording & { readonly reason?: string },
  { wardId, from, to, cause }: ChangedMonths & { readonly cause: AuditAction },
): Promise<void> {
  const days = {
    first: monthDays(from).first - longestWindowDays,
    last: to === null ? null : monthDays(to).last + longestWindowDays,
  };
  const patients = await patientsOnWardWithCultures(tx, { facilityId: by.facilityId, wardId }, days);
  for (let i = 0; i < patients.length; i += chunkSize) {
    const patientIds = patients.slice(i, i + chunkSize);
    await lockPatients(tx, by.facilityId, patientIds);
    await determineAgain(tx, by, { patientIds, cause });
  }
}
