import type { listPeople as endpoint } from "../../../shared/api/people.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { everybody } from "../../store/people.ts";
import type { Act } from "../act.ts";

/** The people of the facility, also those who have left, in the order in which they came. */
export async function listPeople({ store, actor }: Act): Promise<OutputOf<typeof endpoint>> {
  const all = await store.read((read) => everybody(read, actor.facilityId));
  return {
    people: all.map(({ personId, name, active, roles, wardIds }) => ({
      personId,
      name,
      active,
      roles: [...roles],
      wardIds: [...wardIds],
    })),
  };
}
