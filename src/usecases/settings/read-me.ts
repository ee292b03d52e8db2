import type { readMe as endpoint } from "../../../shared/api/people.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { permission } from "../../../shared/permissions.ts";
import { refuse } from "../../../shared/problems.ts";
import { people } from "../../store/people.ts";
import type { Act } from "../act.ts";
import { reachOf } from "../reach.ts";

/** Who the acting person is and what they may do. Refuses `not-signed-in` for a person who is no longer active. */
export async function readMe({ store, actor }: Act): Promise<OutputOf<typeof endpoint>> {
  const all = await store.read((read) => people(read, actor.facilityId));
  const me = all.find((person) => person.personId === actor.personId);
  if (!me) return refuse("not-signed-in", "This person no longer acts in this facility.");
  const { personId, name, roles, wardIds } = me;
  return {
    personId,
    name,
    roles: [...roles],
    wardIds: [...wardIds],
    permissions: permission.options.filter((one) => reachOf(me, one)),
  };
}
