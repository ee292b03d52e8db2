import { refuse } from "../../../shared/problems.ts";
import { importOf } from "../../store/imports.ts";
import type { Act } from "../act.ts";

/**
 * Refuses `not-found` for an import of another facility, or that was never there: both alike, so that nobody learns
 * which there are.
 */
export async function findImport({ store, actor }: Act, importId: number): Promise<void> {
  const found = await store.read((read) => importOf(read, actor.facilityId, importId));
  if (!found) refuse("not-found", "There is no such import in this facility.");
}
