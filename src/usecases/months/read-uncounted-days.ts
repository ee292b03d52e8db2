import type { readUncountedDays as endpoint } from "../../../shared/api/uncounted-days.ts";
import type { Month } from "../../../shared/day.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { dayText } from "../../domain/days/day-number.ts";
import { monthDays } from "../../domain/days/month.ts";
import type { Act } from "../act.ts";
import type { Reach } from "../reach.ts";
import { view } from "../view.ts";
import { censusTaken } from "./census-taken.ts";
import { loadForCare } from "./read-care.ts";
import { uncountedDays } from "./uncounted-days.ts";

/**
 * The patients behind the patient-days that may be missing from a month, as far as wards within reach are concerned, in
 * the order of days. The view is recorded. Refuses `in-the-future`.
 */
export async function readUncountedDays(
  act: Act,
  { month, wardIds }: { month: Month } & Reach,
): Promise<OutputOf<typeof endpoint>> {
  const days = monthDays(month);
  await censusTaken(act, days.first, "/month");
  return view(act, async (read, seen) => {
    const loaded = await loadForCare(read, act, { days, wardIds });
    const owners = new Map(loaded.stays.map(({ stay, ...owner }) => [stay.id, owner]));
    const found = uncountedDays(loaded, act.now)
      .toSorted((a, b) => a.day - b.day || a.stayId - b.stayId)
      .map(({ kind, day, stayId, wardId }) => {
        const owner = owners.get(stayId);
        if (!owner) throw new Error(`stay ${stayId} has no patient`);
        return { kind, day: dayText(day), wardId, patientId: owner.survivorId, identifier: owner.identifier };
      });
    const patientIds = [...new Set(found.map(({ patientId }) => patientId))];
    seen({ action: "view-uncounted-days", patientIds, details: { month } });
    return { month, days: found };
  });
}
