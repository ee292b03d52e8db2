import type { Month } from "../../../shared/day.ts";
import { refuse } from "../../../shared/problems.ts";
import { scopeIn } from "../../domain/cultures/family-of-wards.ts";
import { monthDays } from "../../domain/days/month.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import { writeAudit } from "../../store/audit.ts";
import { casesBetween } from "../../store/case-lists.ts";
import { lockFacility } from "../../store/facilities.ts";
import { addNoneFound, noneFoundIn, noneFoundOf, voidNoneFound } from "../../store/none-found.ts";
import type { Recording } from "../../store/patients.ts";
import { scopesOfWard } from "../../store/scopes.ts";
import type { Tx } from "../../store/store.ts";
import { type Act, recording } from "../act.ts";
import { sameVersion } from "../same-version.ts";
import { knownWard } from "../wards/known-ward.ts";

/** A ward and a month. */
export interface WardMonth {
  readonly wardId: number;
  readonly month: Month;
}

/**
 * Somebody confirms that a watched ward had no event in a month that is over.
 * Refuses `ward-not-watched`, `month-not-over`, `event-found`, `none-found-already`.
 */
export function recordNoneFound(
  act: Act,
  { wardId, month }: WardMonth,
): Promise<{ noneFoundId: number; version: number }> {
  const by = recording(act);
  return act.store.tx(async (tx) => {
    // Whoever writes about a patient shares the facility's row, so no event can appear meanwhile.
    const { zone } = await lockFacility(tx, by.facilityId);
    await knownWard(tx, by.facilityId, wardId);
    if (!scopeIn(await scopesOfWard(tx, wardId), wardId, month))
      refuse("ward-not-watched", "This unit is not under surveillance in this month.", { pointer: "/month" });
    const days = monthDays(month);
    if (zoneNamed(zone).dayOf(act.now) <= days.last)
      refuse("month-not-over", "An event may still come.", { pointer: "/month" });
    const found = (await casesBetween(tx, by.facilityId, days)).filter((one) => one.isCauti && one.wardId === wardId);
    if (found.length > 0) refuse("event-found", `It has ${found.length}.`, { pointer: "/wardId" });
    const standing = (await noneFoundIn(tx, by.facilityId, month)).find((one) => one.wardId === wardId);
    if (standing)
      refuse("none-found-already", "This was confirmed before.", {
        pointer: "/month",
        other: `confirmation ${standing.id}`,
      });
    const noneFoundId = await addNoneFound(tx, by, { wardId, month });
    await writeAudit(tx, by, { action: "record-none-found", details: { noneFoundId, wardId, month } });
    return { noneFoundId, version: 1 };
  });
}

/** Takes such a confirmation back. Refuses `not-found` and `stale-version`. */
export function withdrawNoneFound(
  act: Act,
  input: { wardId: number; noneFoundId: number; reason: string; seenVersion?: number },
): Promise<{ noneFoundId: number; version: number }> {
  const by = recording(act);
  const { wardId, noneFoundId, reason, seenVersion } = input;
  return act.store.tx(async (tx) => {
    await lockFacility(tx, by.facilityId);
    const standing = await noneFoundOf(tx, by.facilityId, { wardId, noneFoundId });
    const { month, version } = standing;
    sameVersion(standing, seenVersion, { wardId, month, version });
    await voidNoneFound(tx, standing, reason);
    await writeAudit(tx, by, { action: "withdraw-none-found", details: { noneFoundId, wardId, month, reason } });
    return { noneFoundId, version: version + 1 };
  });
}

/** Withdraws what was confirmed of wards and months in which an event appears. */
export async function withdrawForEvents(tx: Tx, by: Recording, events: readonly WardMonth[]): Promise<void> {
  for (const month of new Set(events.map((one) => one.month))) {
    const wardIds = new Set(events.filter((one) => one.month === month).map(({ wardId }) => wardId));
    const standing = (await noneFoundIn(tx, by.facilityId, month)).filter(({ wardId }) => wardIds.has(wardId));
    for (const one of standing) {
      const reason = "An event appeared";
      await voidNoneFound(tx, one, reason);
      const details = { noneFoundId: one.id, wardId: one.wardId, month, reason };
      await writeAudit(tx, by, { action: "withdraw-none-found", details });
    }
  }
}
