import { ownersOfStays, staysOfCatheters } from "../../store/stays.ts";
import type { Act } from "../act.ts";

/** Stays and catheters by the numbers that another system gave them. */
export interface Numbered {
  readonly stayIds: ReadonlyMap<string, number>;
  /** The surviving patient of each of these stays, by the number of the stay. */
  readonly patientIds: ReadonlyMap<string, number>;
  readonly catheterIds: ReadonlyMap<string, number>;
}

/** Finds what was imported or recorded under these numbers; what is not there is left out. */
export function findNumbered(
  { store, actor }: Pick<Act, "store" | "actor">,
  numbers: { readonly stays: readonly string[]; readonly catheters: readonly string[] },
): Promise<Numbered> {
  return store.read(async (read) => {
    const owners = await ownersOfStays(read, actor.facilityId, numbers.stays);
    const stays = await staysOfCatheters(read, actor.facilityId, numbers.catheters);
    return {
      stayIds: new Map([...owners].map(([number, { stayId }]) => [number, stayId])),
      patientIds: new Map([...owners].map(([number, { survivorId }]) => [number, survivorId])),
      catheterIds: new Map([...stays].flatMap(([number, [one]]) => (one ? [[number, one.catheterId]] : []))),
    };
  });
}
