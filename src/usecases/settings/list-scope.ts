import type { listScope as endpoint } from "../../../shared/api/scope.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { editionNamed } from "../../domain/editions/index.ts";
import { scopesOfFacility } from "../../store/scopes.ts";
import type { Act } from "../act.ts";
import type { Reach } from "../reach.ts";

/** Which wards within reach are watched, in which months and by which definitions. */
export async function listScope({ store, actor }: Act, { wardIds }: Reach): Promise<OutputOf<typeof endpoint>> {
  const rows = await store.read((read) => scopesOfFacility(read, actor.facilityId, wardIds));
  const isHeld = (edition: string) => editionNamed(edition) !== undefined;
  return { scopes: rows.map(({ id, ...scope }) => ({ ...scope, scopeId: id, isHeld: isHeld(scope.edition) })) };
}
