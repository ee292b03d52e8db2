import { storeNotes } from "../../store/notes.ts";
import type { Recording } from "../../store/patients.ts";
import { addSigns, replaceSign } from "../../store/signs.ts";
import { addSpecimens, replaceSpecimen } from "../../store/specimens.ts";
import type { Tx } from "../../store/store.ts";
import { storeChanges } from "../store-change.ts";
import type { PlannedGroups } from "./plan-group.ts";

/** The one place where an import writes what it made of locked patients: stays, notes, specimens and signs. */
export async function storePlanned(
  tx: Tx,
  by: Recording,
  { changes, notes, cultures: { specimens, signs } }: Omit<PlannedGroups, "outcomes" | "survivorIds">,
): Promise<void> {
  await storeChanges(tx, by, changes);
  await storeNotes(tx, by, notes);
  await addSpecimens(tx, added(specimens));
  for (const { old, now } of specimens) if (old !== null) await replaceSpecimen(tx, by, { old, now });
  await addSigns(tx, added(signs));
  for (const { old, now } of signs) if (old !== null) await replaceSign(tx, by, { old, now });
}

function added<T>(changes: readonly { readonly old: T | null; readonly now: T }[]): T[] {
  return changes.flatMap(({ old, now }) => (old === null ? [now] : []));
}
