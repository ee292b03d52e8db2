import { expect, it } from "vitest";
import { people } from "../../../src/store/people.ts";
import { addPerson } from "../../../src/usecases/settings/add-person.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";

const later = "2024-03-10 10:00";

onEachDatabase("adding a person", (fresh) => {
  const shared = sharedStore(fresh);

  it("gives them roles in the facility and wards by their codes, with an audit entry", async () => {
    const bay = await alderBay(shared.store);
    const act = bay.at(later);
    const { personId } = await addPerson(act, { name: "Kim Reed", roles: ["bedside"], wards: ["B"] });
    const found = await shared.store.read((read) => people(read, bay.facilityId));
    expect(found.at(-1)).toMatchObject({ personId, name: "Kim Reed", roles: ["bedside"], wardIds: [bay.b] });
    expect(await auditOf(shared.store, bay.facilityId, act.now)).toEqual([
      {
        at: act.now,
        personId: bay.personId,
        action: "add-person",
        patientIds: [],
        details: { personId, roles: ["bedside"], wardIds: [bay.b] },
      },
    ]);
  });

  it("is refused without a name, and for a ward that the facility does not have", async () => {
    const bay = await alderBay(shared.store);
    const elsewhere = await alderBay(shared.store);
    await elsewhere.addWard("ELSEWHERE", "inpatient");
    const add = (name: string, wards: string[]) => async () => addPerson(bay.at(later), { name, roles: [], wards });
    expect(await refusalOf(shared.store, add(" ", []))).toEqual({ code: "field-missing", pointer: "/name" });
    expect(await refusalOf(shared.store, add("Kim Reed", ["A", "ELSEWHERE"]))).toEqual({
      code: "not-found",
      pointer: "/wards",
    });
  });
});
