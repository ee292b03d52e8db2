import type { CareRules } from "../../domain/intake/plan.ts";
import type { Read } from "../../store/store.ts";
import type { Act } from "../act.ts";
import { loadWayRules } from "../cultures/way-rules.ts";
import { loadPolicies } from "../settings/load-policy.ts";

/** What reviews, specimens and signs of files are judged by, and who writes them down when. */
export async function careRules(read: Read, { actor, now }: Act): Promise<CareRules> {
  const policyOn = await loadPolicies(read, actor.facilityId);
  return { ...(await loadWayRules(read, actor.facilityId)), now, personId: actor.personId, policyOn };
}
