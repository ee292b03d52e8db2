import { type Fault, Problem, refuse } from "../../../shared/problems.ts";
import { type DayNumber, dayText } from "../../domain/days/day-number.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import { writeAudit } from "../../store/audit.ts";
import { type CountedByHand, dailyCount, putDailyCounts } from "../../store/daily-counts.ts";
import { facility } from "../../store/facilities.ts";
import type { Tx } from "../../store/store.ts";
import { lockWard, wards } from "../../store/wards.ts";
import { type Act, recording } from "../act.ts";

export interface RecordDailyCount extends CountedByHand {
  readonly reason?: string | undefined;
  /** The version of the count that the person saw and replaces, null for none; left out by doors that carry none. */
  readonly replaces?: number | null;
}

/**
 * Records what was counted by hand on a ward on a day; replaces an earlier count of that day, which is kept.
 * Refuses `count-impossible` (more catheters than patients, less than none), `in-the-future`, `not-found`, and
 * `stale-version` when another count came first.
 */
export function recordDailyCount(act: Act, input: RecordDailyCount): Promise<{ wardId: number; version: number }> {
  return act.store.tx(async (tx) => {
    const by = { ...recording(act), ...(input.reason === undefined ? {} : { reason: input.reason }) };
    const { zone } = await facility(tx, by.facilityId);
    await checkWard(tx, by.facilityId, input.wardId);
    checkDailyCount(input, zoneNamed(zone).dayOf(act.now));
    const { wardId, day, patients, catheters } = input;
    await lockWard(tx, wardId);
    await refuseStale(tx, input);
    await putDailyCounts(tx, by, [{ wardId, day, patients, catheters }]);
    await writeAudit(tx, by, {
      action: "record-daily-count",
      details: { wardId, day, patients, catheters, reason: input.reason },
    });
    return { wardId, version: (await dailyCount(tx, wardId, day))?.version ?? 1 };
  });
}

async function refuseStale(tx: Tx, { wardId, day, replaces }: RecordDailyCount): Promise<void> {
  if (replaces === undefined) return;
  const stored = await dailyCount(tx, wardId, day);
  if ((stored?.version ?? null) === replaces) return;
  const problem = new Problem({ code: "stale-version", pointer: "/replaces", detail: "Another count came first." });
  problem.current = stored === null ? {} : { ...stored, day: dayText(day) };
  throw problem;
}

async function checkWard(tx: Tx, facilityId: number, wardId: number): Promise<void> {
  if ((await wards(tx, facilityId, [wardId])).length === 0)
    refuse("not-found", "There is no such unit in this facility.", { pointer: "/wardId" });
}

/** Refuses `count-impossible` and `in-the-future`, all faults at once. */
export function checkDailyCount(count: Omit<CountedByHand, "wardId">, today: DayNumber): void {
  const faults: Fault[] = [];
  const impossible = (pointer: string, detail: string) => faults.push({ code: "count-impossible", pointer, detail });
  if (count.day > today) faults.push({ code: "in-the-future", pointer: "/day", detail: "This day has not come yet." });
  const noCounts = (["patients", "catheters"] as const).filter((f) => !Number.isInteger(count[f]) || count[f] < 0);
  for (const field of noCounts) impossible(`/${field}`, "A count is a whole number, 0 or more.");
  if (noCounts.length === 0 && count.catheters > count.patients)
    impossible("/catheters", "There cannot be more patients with a catheter than patients.");
  const [first, ...more] = faults;
  if (first) throw new Problem(first, ...more);
}
