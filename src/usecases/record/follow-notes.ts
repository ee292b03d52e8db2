import type { AuditAction } from "../../../shared/audit-words.ts";
import type { Zone } from "../../domain/days/zone.ts";
import { withRemovalFollowing } from "../../domain/timeline/removal-within-day.ts";
import { stands, withEntry, withStay } from "../../domain/timeline/timeline.ts";
import { hasHourlessRemoval } from "../../store/catheters.ts";
import type { Recording } from "../../store/patients.ts";
import type { Tx } from "../../store/store.ts";
import { loadTimeline } from "../../store/timelines.ts";
import { determineAgain } from "../cultures/determine-again.ts";
import { storeChanges } from "../store-change.ts";

/**
 * A removal whose hour is not recorded follows the notes of its day, after they were written, corrected or voided: each
 * says that the catheter was still in place then. Other removals stay, at the cost of one look at the catheter.
 */
export async function followNotes(
  tx: Tx,
  by: Recording & { reason?: string },
  { patientId, catheterId, zone, cause }: { patientId: number; catheterId: number; zone: Zone; cause: AuditAction },
): Promise<void> {
  if (!(await hasHourlessRemoval(tx, catheterId))) return;
  const before = await loadTimeline(tx, patientId);
  const stay = before.stays.find(({ catheters }) => catheters.some(({ id }) => id === catheterId));
  const catheter = stay?.catheters.find(({ id }) => id === catheterId);
  if (!stay || !catheter || !stands(catheter) || !stands(stay)) return;
  const followed = withRemovalFollowing(catheter, zone);
  if (followed === catheter) return;
  const after = withStay(before, { ...stay, catheters: withEntry(stay.catheters, followed) });
  await storeChanges(tx, by, [{ before, after }]);
  await determineAgain(tx, by, { patientIds: [patientId], cause });
}
