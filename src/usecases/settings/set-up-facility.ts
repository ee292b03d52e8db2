import { type CensusTime, censusTime } from "../../../shared/day.ts";
import { refuse } from "../../../shared/problems.ts";
import type { Role } from "../../../shared/vocabulary.ts";
import type { Instant } from "../../domain/days/day-number.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import { writeAudit } from "../../store/audit.ts";
import { addFacility } from "../../store/facilities.ts";
import { addPerson } from "../../store/people.ts";
import type { Store } from "../../store/store.ts";
import type { Actor } from "../act.ts";

export interface SetUpFacility {
  readonly name: string;
  readonly zone: string;
  readonly censusTime: CensusTime;
  /** The fictional hospital: every page says so. */
  readonly demo?: boolean;
  /** The first person, who can do everything until others are there. */
  readonly person: { readonly name: string; readonly roles: readonly Role[] };
}

/**
 * A new facility and its first person: the only act without an acting person before it.
 * Refuses `zone-unknown` and `field-missing`.
 */
export function setUpFacility({ store, now }: { store: Store; now: Instant }, input: SetUpFacility): Promise<Actor> {
  zoneNamed(input.zone);
  if (input.name.trim() === "") refuse("field-missing", "A facility needs a name.", { pointer: "/name" });
  if (!censusTime.safeParse(input.censusTime).success)
    refuse("census-time-unreadable", "This is no census time.", { pointer: "/censusTime" });
  return store.tx(async (tx) => {
    const facilityId = tx.newId();
    const personId = tx.newId();
    const by = { facilityId, personId, now };
    await addFacility(tx, by, input);
    await addPerson(tx, by, { id: personId, ...input.person, wardIds: [] });
    await writeAudit(tx, by, { action: "set-up-facility", details: { zone: input.zone, census: input.censusTime } });
    return { personId, facilityId, roles: input.person.roles, wardIds: [] };
  });
}
