import type { Instant } from "../domain/days/day-number.ts";
import { inChunks } from "./in-chunks.ts";
import type { Read } from "./store.ts";

/**
 * Those of these surviving patients who are on one of the wards, or left one of them at `since` or later, also under a
 * record that was merged into theirs. Voided entries lead nowhere.
 */
export async function patientsInReach(
  read: Read,
  facilityId: number,
  { patientIds, wardIds, since }: { patientIds: readonly number[]; wardIds: readonly number[]; since: Instant },
): Promise<number[]> {
  if (wardIds.length === 0) return [];
  const onWard = {
    wardId: { in: [...wardIds] },
    voidKey: 0,
    OR: [{ endAt: null }, { endAt: { gte: new Date(since) } }],
  };
  const rows = await inChunks([...new Set(patientIds)], (chunk) =>
    read.db.patient.findMany({
      where: { facilityId, survivorId: { in: chunk }, stays: { some: { voidKey: 0, wardStays: { some: onWard } } } },
      select: { survivorId: true },
    }),
  );
  return [...new Set(rows.map(({ survivorId }) => survivorId))];
}
