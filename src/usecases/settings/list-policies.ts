import type { listPolicies as endpoint } from "../../../shared/api/policies.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { dayText } from "../../domain/days/day-number.ts";
import { defaultPolicy, defaultSources } from "../../domain/policy/default-policy.ts";
import { policies } from "../../store/policies.ts";
import type { Act } from "../act.ts";
import type { Reach } from "../reach.ts";

/** All policy versions of the facility, and of the wards within reach, with the policy that is built in. */
export async function listPolicies({ store, actor }: Act, { wardIds }: Reach): Promise<OutputOf<typeof endpoint>> {
  const rows = await store.read((read) => policies(read, actor.facilityId));
  const seen = rows.filter(({ wardId }) => wardId === null || (wardIds?.includes(wardId) ?? true));
  return {
    builtIn: { body: defaultPolicy, sources: { ...defaultSources } },
    policies: seen.map(({ id, fromDay, ...policy }) => ({ ...policy, policyId: id, fromDay: dayText(fromDay) })),
  };
}
