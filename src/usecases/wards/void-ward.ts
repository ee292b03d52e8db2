import { refuse } from "../../../shared/problems.ts";
import { writeAudit } from "../../store/audit.ts";
import { lockFacility } from "../../store/facilities.ts";
import { entriesOfWard, setVoided } from "../../store/ward-merges.ts";
import { type Act, recording } from "../act.ts";
import { knownWard } from "./known-ward.ts";

/**
 * Marks a ward as entered in error; its code is free again. Refuses `not-found`, and `ward-has-entries` while anything is
 * recorded of it.
 */
export function voidWard(
  act: Act,
  { wardId, reason }: { readonly wardId: number; readonly reason: string },
): Promise<{ wardId: number }> {
  return act.store.tx(async (tx) => {
    const by = { ...recording(act), reason };
    await lockFacility(tx, by.facilityId);
    await knownWard(tx, by.facilityId, wardId);
    const found = Object.entries(await entriesOfWard(tx, by.facilityId, wardId)).filter(([, count]) => count > 0);
    const words = found.map(([kind, count]) => `${kind}: ${count}`).join(", ");
    if (found.length > 0) refuse("ward-has-entries", `The record has entries of this unit. ${words}.`);
    await setVoided(tx, by, wardId);
    await writeAudit(tx, by, { action: "void-ward", details: { wardId, reason } });
    return { wardId };
  });
}
