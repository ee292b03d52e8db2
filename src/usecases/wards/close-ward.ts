import { refuse } from "../../../shared/problems.ts";
import { type DayNumber, dayMs, dayText } from "../../domain/days/day-number.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import { writeAudit } from "../../store/audit.ts";
import { lockFacility } from "../../store/facilities.ts";
import { staysAfter } from "../../store/wards.ts";
import { type Act, recording } from "../act.ts";
import { changeUndated } from "./describe-ward.ts";
import { knownWard } from "./known-ward.ts";

export interface CloseWard {
  readonly wardId: number;
  /** The last day of the ward; null: it is open after all. */
  readonly closedDay: DayNumber | null;
  readonly reason?: string;
}

/**
 * Closes a ward with the end of a day, or opens it again.
 * Refuses `not-found`, `end-before-start` for a day before it opened, and `ward-in-use` when patients were there later.
 */
export function closeWard(act: Act, { wardId, closedDay, reason }: CloseWard): Promise<{ wardId: number }> {
  return act.store.tx(async (tx) => {
    const by = { ...recording(act), ...(reason === undefined ? {} : { reason }) };
    const { zone } = await lockFacility(tx, by.facilityId);
    const ward = await knownWard(tx, by.facilityId, wardId);
    if (closedDay !== null) {
      if (closedDay < (ward.openedDay ?? closedDay))
        refuse("end-before-start", "The unit was not open yet on this day.", { pointer: "/closedDay" });
      const after = zoneNamed(zone).firstInstantFrom((closedDay + 1) * dayMs);
      const found = await staysAfter(tx, wardId, { after, now: act.now });
      const detail = `The record has ${found} ${found === 1 ? "time" : "times"} of patients on this unit after ${dayText(closedDay)}.`;
      if (found > 0) refuse("ward-in-use", detail, { pointer: "/closedDay" });
    }
    await changeUndated(tx, by, ward, { closedDay });
    await writeAudit(tx, by, { action: "close-ward", details: { wardId, closedDay, reason } });
    return { wardId };
  });
}
