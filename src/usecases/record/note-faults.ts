import { boundFaults } from "../../../shared/bounds/bounds.ts";
import { type Fault, refuse } from "../../../shared/problems.ts";
import type { Zone } from "../../domain/days/zone.ts";
import type { CatheterNote } from "../../domain/timeline/note.ts";
import { noteTextFaults } from "../../domain/timeline/note-text-faults.ts";
import { type Stay, stands } from "../../domain/timeline/timeline.ts";
import { placeFaults, wardAt } from "../../domain/timeline/write-note.ts";
import { stayOfCatheter } from "../../store/catheters.ts";
import type { Read } from "../../store/store.ts";
import { loadPolicies, type PolicyOn } from "../settings/load-policy.ts";

/** All that is wrong with a note as it would be stored. Refuses `not-found`, and `entry-voided` for its catheter. */
export async function noteFaults(
  read: Read,
  facilityId: number,
  { note, zone, confirm }: { note: CatheterNote; zone: Zone; confirm: readonly string[] },
): Promise<Fault[]> {
  const stay = await stayOfCatheter(read, facilityId, note.catheterId);
  return faultsInStay(stay, { note, zone, confirm, policyOn: await loadPolicies(read, facilityId) });
}

/** {@link noteFaults} where the stay and the policies are known. */
export function faultsInStay(
  stay: Stay,
  given: { note: CatheterNote; zone: Zone; confirm: readonly string[]; policyOn: PolicyOn },
): Fault[] {
  const { note, zone, confirm, policyOn } = given;
  const catheter = stay.catheters.find(({ id }) => id === note.catheterId);
  if (!catheter) return refuse("not-found", "There is no such catheter.");
  if (!stands(catheter) || !stands(stay))
    refuse("entry-voided", "This catheter is marked as entered in error.", { other: `catheter ${catheter.id}` });
  const policy = policyOn(wardAt(stay, note.at), zone.dayOf(note.at));
  const amount = { quantity: "urineOutputMl", value: note.amountMl, pointer: "/amountMl" } as const;
  return [
    ...placeFaults(stay, catheter, note, zone),
    ...noteTextFaults(note, policy.body),
    ...boundFaults([amount], { ageDays: null, confirmed: confirm }),
  ];
}
