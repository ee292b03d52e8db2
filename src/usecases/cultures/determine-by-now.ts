import { zoneNamed } from "../../domain/days/zone.ts";
import { writeAudit } from "../../store/audit.ts";
import { patientsToDetermineAgain } from "../../store/case-lists.ts";
import { facility } from "../../store/facilities.ts";
import { lockPatients } from "../../store/patients.ts";
import type { Tx } from "../../store/store.ts";
import { type Act, recording } from "../act.ts";
import { finishWords } from "../settings/apply-laboratory-word.ts";
import { determineAgain } from "./determine-again.ts";

/** How many patients are taken at once: others may want to record about them meanwhile. */
const chunkSize = 50;

/**
 * Determines again what no act of a person will: past specimens of a laboratory wording whose page was left, and what
 * time alone may have changed, because a window that was open has closed. Whoever reads determinations of many patients
 * calls it first; there is nothing to do on most days.
 */
export async function determineByNow(act: Act): Promise<void> {
  await finishWords(act);
  const by = recording(act);
  const waiting = await act.store.read(async (read) => {
    const { zone } = await facility(read, by.facilityId);
    return patientsToDetermineAgain(read, by.facilityId, zoneNamed(zone).dayOf(act.now));
  });
  for (let i = 0; i < waiting.length; i += chunkSize) {
    const patientIds = waiting.slice(i, i + chunkSize);
    const work = async (tx: Tx) => {
      await lockPatients(tx, by.facilityId, patientIds);
      const changed = await determineAgain(tx, by, { patientIds, cause: "determine-again" });
      if (changed.length === 0) return;
      const details = { cases: changed.map(({ caseId }) => caseId) };
      await writeAudit(tx, by, { action: "determine-again", patientIds, details });
    };
    await act.store.tx(work, { apart: true });
  }
}
