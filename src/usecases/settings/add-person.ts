import { refuse } from "../../../shared/problems.ts";
import type { Role } from "../../../shared/vocabulary.ts";
import { writeAudit } from "../../store/audit.ts";
import { addPerson as store } from "../../store/people.ts";
import { wards } from "../../store/wards.ts";
import { type Act, recording } from "../act.ts";

export interface AddPerson {
  readonly name: string;
  readonly roles: readonly Role[];
  /** Codes of the wards that the person belongs to. */
  readonly wards: readonly string[];
}

/** Adds a person with roles in the facility. Refuses `field-missing` and `not-found` for a ward that is not there. */
export function addPerson(act: Act, input: AddPerson): Promise<{ personId: number }> {
  if (input.name.trim() === "") refuse("field-missing", "A person needs a name.", { pointer: "/name" });
  return act.store.tx(async (tx) => {
    const by = recording(act);
    const known = new Map((await wards(tx, by.facilityId)).map((ward) => [ward.code, ward.id]));
    const wardIds = input.wards.map(
      (code) =>
        known.get(code) ?? refuse("not-found", "There is no such unit in this facility.", { pointer: "/wards" }),
    );
    const personId = tx.newId();
    await store(tx, by, { id: personId, name: input.name, roles: input.roles, wardIds });
    await writeAudit(tx, by, { action: "add-person", details: { personId, roles: input.roles, wardIds } });
    return { personId };
  });
}
