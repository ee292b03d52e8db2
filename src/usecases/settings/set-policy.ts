import type { PolicyBody } from "../../../shared/policy.ts";
import { Problem, refuse } from "../../../shared/problems.ts";
import { type DayNumber, dayText } from "../../domain/days/day-number.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import { policyFaults } from "../../domain/policy/policy-faults.ts";
import { writeAudit } from "../../store/audit.ts";
import { lockFacility } from "../../store/facilities.ts";
import { addPolicy, type PolicyRow, policies } from "../../store/policies.ts";
import { type Act, recording } from "../act.ts";
import { knownWard } from "../wards/known-ward.ts";

export interface SetPolicy {
  /** null: the facility's own. */
  readonly wardId: number | null;
  readonly fromDay: DayNumber;
  /** null: back to the level above. */
  readonly body: PolicyBody | null;
  /** The latest number that the person saw, 0 for none. */
  readonly replaces: number;
  readonly reason: string;
}

/**
 * Sets a new version of the facility's or a ward's policy from a day on. The first version of each may begin on any day;
 * later ones begin today or later, so that what was in force stays true.
 * Refuses `stale-version`, `policy-in-the-past`, `policy-contradicts` and `not-found` for a ward.
 */
export function setPolicy(act: Act, input: SetPolicy): Promise<{ policyId: number; number: number }> {
  return act.store.tx(async (tx) => {
    const by = recording(act);
    const { zone } = await lockFacility(tx, by.facilityId);
    const { wardId, fromDay, body, reason } = input;
    if (wardId !== null) await knownWard(tx, by.facilityId, wardId);
    const [fault, ...more] = body === null ? [] : policyFaults(body);
    if (fault) throw new Problem(fault, ...more);
    const own = (await policies(tx, by.facilityId)).filter((policy) => policy.wardId === wardId);
    const latest = own.at(-1);
    refuseStale(latest, input.replaces);
    if (latest && fromDay < zoneNamed(zone).dayOf(act.now))
      refuse("policy-in-the-past", "This day is over.", { pointer: "/fromDay" });
    const policyId = tx.newId();
    const number = (latest?.number ?? 0) + 1;
    await addPolicy(tx, by, { id: policyId, wardId, number, fromDay, body, reason });
    await writeAudit(tx, by, { action: "set-policy", details: { policyId, wardId, number } });
    return { policyId, number };
  });
}

function refuseStale(latest: PolicyRow | undefined, replaces: number): void {
  if ((latest?.number ?? 0) === replaces) return;
  const detail = `The latest version is number ${latest?.number ?? 0} by now.`;
  const problem = new Problem({ code: "stale-version", pointer: "/replaces", detail });
  problem.current = latest
    ? { ...latest, fromDay: dayText(latest.fromDay), recordedAt: new Date(latest.recordedAt).toISOString() }
    : {};
  throw problem;
}
