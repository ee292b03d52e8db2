import { refuse } from "../../shared/problems.ts";
import type { DayNumber } from "../domain/days/day-number.ts";
import { zoneNamed } from "../domain/days/zone.ts";
import { writeAudit } from "../store/audit.ts";
import { type CountedByHand, putDailyCounts } from "../store/daily-counts.ts";
import { facility } from "../store/facilities.ts";
import type { Tx } from "../store/store.ts";
import { wards } from "../store/wards.ts";
import { type Act, recording } from "./act.ts";

/**
 * Records what was counted by hand on a ward on a day; replaces an earlier count of that day, which is kept.
 * Refuses `count-impossible` (more catheters than patients, less than none), `in-the-future`, `not-found`.
 */
export function recordDailyCount(act: Act, input: CountedByHand & { reason?: string }): Promise<{ wardId: number }> {
  return act.store.tx(async (tx) => {
    const by = { ...recording(act), ...(input.reason === undefined ? {} : { reason: input.reason }) };
    const { zone } = await facility(tx, by.facilityId);
    await checkWard(tx, by.facilityId, input.wardId);
    checkDailyCount(input, zoneNamed(zone).dayOf(act.now));
    const { wardId, day, patients, catheters } = input;
    await putDailyCounts(tx, by, [{ wardId, day, patients, catheters }]);
    await writeAudit(tx, by, { action: "record-daily-count", details: input });
    return { wardId };
  });
}

async function checkWard(tx: Tx, facilityId: number, wardId: number): Promise<void> {
  if ((await wards(tx, facilityId, [wardId])).length === 0)
    refuse("not-found", "There is no such ward in this facility.", { pointer: "/wardId" });
}

/** Refuses `count-impossible` and `in-the-future`. */
export function checkDailyCount(count: Omit<CountedByHand, "wardId">, today: DayNumber): void {
  if (count.day > today) refuse("in-the-future", "This day has not come yet.", { pointer: "/day" });
  for (const field of ["patients", "catheters"] as const)
    if (!Number.isInteger(count[field]) || count[field] < 0)
      refuse("count-impossible", "A count is a whole number, 0 or more.", { pointer: `/${field}` });
  if (count.catheters > count.patients)
    refuse("count-impossible", "There cannot be more patients with a catheter than patients.", {
      pointer: "/catheters",
    });
}
