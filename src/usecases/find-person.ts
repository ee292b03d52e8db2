import { facilities } from "../store/facilities.ts";
import { people } from "../store/people.ts";
import type { Store } from "../store/store.ts";
import type { Actor } from "./act.ts";

/** The active person with that number, in the first facility in which they have a role; null when there is none. */
export function findPerson(store: Store, personId: number): Promise<Actor | null> {
  return store.read(async (read) => {
    for (const { id } of await facilities(read)) {
      const found = (await people(read, id)).find((person) => person.personId === personId);
      if (found) return found;
    }
    return null;
  });
}
