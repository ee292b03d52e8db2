import type { readPolicy as endpoint } from "../../../shared/api/policies.ts";
import type { Day } from "../../../shared/day.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { dayNumber, dayText } from "../../domain/days/day-number.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import { policySentences } from "../../domain/policy/policy-sentences.ts";
import { facility } from "../../store/facilities.ts";
import { wards } from "../../store/wards.ts";
import type { Act } from "../act.ts";
import { loadPolicies } from "./load-policy.ts";

/** The policy in force on a ward on a day, with its rules as the sentences that flags print. */
export function readPolicy(
  { store, actor, now }: Act,
  input: { wardId: number; day?: Day | undefined },
): Promise<OutputOf<typeof endpoint>> {
  return store.read(async (read) => {
    const { zone } = await facility(read, actor.facilityId);
    const day = input.day === undefined ? zoneNamed(zone).dayOf(now) : dayNumber(input.day);
    const policy = (await loadPolicies(read, actor.facilityId))(input.wardId, day);
    const [ward] = await wards(read, actor.facilityId, [input.wardId]);
    const sentences = policySentences(policy, ward?.code ?? null);
    const { wardId, number, fromDay, body } = policy;
    return { wardId, number, fromDay: fromDay === null ? null : dayText(fromDay), body, sentences };
  });
}
