import { personOf } from "../../store/people.ts";
import type { Store } from "../../store/store.ts";
import type { Actor } from "../act.ts";

/** The active person with that number, in the first facility in which they have a role; null when there is none. */
export function findPerson(store: Store, personId: number): Promise<Actor | null> {
  return store.read((read) => personOf(read, personId));
}
