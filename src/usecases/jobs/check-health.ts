import { facilities } from "../../store/facilities.ts";
import type { Store } from "../../store/store.ts";

/** Reads a little from the database. Refuses `database-unreachable` and the like when that fails. */
export async function checkHealth(store: Store): Promise<void> {
  await store.read(facilities);
}
