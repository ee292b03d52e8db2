import { type Fault, refuse } from "../../shared/problems.ts";
import { boundFaults } from "../domain/bounds/bounds.ts";
import type { Zone } from "../domain/days/zone.ts";
import type { CatheterNote } from "../domain/timeline/note.ts";
import { noteTextFaults } from "../domain/timeline/note-text-faults.ts";
import { stands } from "../domain/timeline/timeline.ts";
import { placeFaults, wardAt } from "../domain/timeline/write-note.ts";
import { stayOfCatheter } from "../store/catheters.ts";
import type { Read } from "../store/store.ts";
import { loadPolicies } from "./load-policy.ts";

/** All that is wrong with a note as it would be stored. Refuses `not-found`, and `entry-voided` for its catheter. */
export async function noteFaults(
  read: Read,
  facilityId: number,
  { note, zone, confirm }: { note: CatheterNote; zone: Zone; confirm: readonly string[] },
): Promise<Fault[]> {
  const stay = await stayOfCatheter(read, facilityId, note.catheterId);
  const catheter = stay.catheters.find(({ id }) => id === note.catheterId);
  if (!catheter) return refuse("not-found", "There is no such catheter.");
  if (!stands(catheter) || !stands(stay))
    refuse("entry-voided", "This catheter was voided.", { other: `catheter ${catheter.id}` });
  const policy = (await loadPolicies(read, facilityId))(wardAt(stay, note.at), zone.dayOf(note.at));
  const amount = { quantity: "urineOutputMl", value: note.amountMl, pointer: "/amountMl" } as const;
  return [
    ...placeFaults(stay, catheter, note, zone),
    ...noteTextFaults(note, policy.body),
    ...boundFaults([amount], { ageDays: null, confirmed: confirm }),
  ];
}
