import type { readDailyCounts as endpoint } from "../../../shared/api/daily-counts.ts";
import type { Month } from "../../../shared/day.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { dayText } from "../../domain/days/day-number.ts";
import { monthDays } from "../../domain/days/month.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import { dailyCounts } from "../../store/daily-counts.ts";
import { facility } from "../../store/facilities.ts";
import type { Act } from "../act.ts";

/** What was counted by hand on a ward in a month, and the days that are over and have no count. */
export function readDailyCounts(
  { store, actor, now }: Act,
  { wardId, month }: { wardId: number; month: Month },
): Promise<OutputOf<typeof endpoint>> {
  return store.read(async (read) => {
    const { first, last } = monthDays(month);
    const { zone } = await facility(read, actor.facilityId);
    const counted = await dailyCounts(read, [wardId], { first, last });
    const over = Math.min(last, zoneNamed(zone).dayOf(now) - 1);
    const known = new Set(counted.map(({ day }) => day));
    const missing = [];
    for (let day = first; day <= over; day++) if (!known.has(day)) missing.push(dayText(day));
    const counts = counted.map(({ wardId: _, day, ...count }) => ({ ...count, day: dayText(day) }));
    return { wardId, month, counts, missing };
  });
}
