import { refuse } from "../../../shared/problems.ts";
import type { DayNumber } from "../../domain/days/day-number.ts";
import { writeAudit } from "../../store/audit.ts";
import { lockFacility } from "../../store/facilities.ts";
import { mergedCodes, putWardSetting, addWard as storeWard, type WardDescription, wards } from "../../store/wards.ts";
import { type Act, recording } from "../act.ts";

export interface AddWard extends Omit<WardDescription, "fromDay"> {
  readonly code: string;
  /** The day from which the ward is what is said here; null: it was always there. */
  readonly openedDay: DayNumber | null;
}

/**
 * A new ward, described from the day it opened.
 * Refuses `field-missing` without a code and `ward-code-taken`.
 */
export function addWard(act: Act, input: AddWard): Promise<{ wardId: number }> {
  return act.store.tx(async (tx) => {
    const by = recording(act);
    const { code, openedDay, ...said } = input;
    if (code.trim() === "") refuse("field-missing", "A unit needs a short code.", { pointer: "/code" });
    await lockFacility(tx, by.facilityId);
    const other = (await wards(tx, by.facilityId)).find((ward) => ward.code === code);
    if (other)
      refuse("ward-code-taken", "Another unit has this code.", { pointer: "/code", other: `ward ${other.id}` });
    const merged = new Map(await mergedCodes(tx, by.facilityId)).get(code);
    if (merged !== undefined)
      refuse("ward-code-taken", `A unit with this code was merged into ${merged}.`, { pointer: "/code" });
    const wardId = await storeWard(tx, by, { code, openedDay, namedOnly: false });
    await putWardSetting(tx, by, wardId, { ...said, fromDay: openedDay ?? 0, byHand: true });
    await writeAudit(tx, by, { action: "add-ward", details: { wardId, setting: said.setting, openedDay } });
    return { wardId };
  });
}
