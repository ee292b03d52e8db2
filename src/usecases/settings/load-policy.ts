import type { DayNumber } from "../../domain/days/day-number.ts";
import { type PolicyInForce, policyInForce } from "../../domain/policy/policy-in-force.ts";
import { policies } from "../../store/policies.ts";
import type { Read } from "../../store/store.ts";

/** Finds the policy in force on a ward (null: on none) on a day; each answer is worked out once. */
export type PolicyOn = (wardId: number | null, day: DayNumber) => PolicyInForce;

/** Loads the policies of a facility and of its wards. */
export async function loadPolicies(read: Read, facilityId: number): Promise<PolicyOn> {
  const versions = await policies(read, facilityId);
  const known = new Map<string, PolicyInForce>();
  return (wardId, day) => {
    const key = `${wardId} ${day}`;
    const found = known.get(key) ?? policyInForce(versions, wardId, day);
    known.set(key, found);
    return found;
  };
}
