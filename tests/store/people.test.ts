import { expect, it } from "vitest";
import { addPerson, people } from "../../src/store/people.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";

onEachDatabase("people", (fresh) => {
  const shared = sharedStore(fresh);

  it("have roles and wards in a facility, in the order in which they came", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const by = bay.by("2024-02-01 08:00");
    const added = await shared.store.tx(async (tx) => {
      const nurse = {
        id: tx.newId(),
        name: "Zoë O'Hara",
        roles: ["bedside", "manager"],
        wardIds: [bay.a, bay.b],
      } as const;
      const feed = { id: tx.newId(), name: "Feed", roles: ["feed"], wardIds: [] } as const;
      await addPerson(tx, by, nurse);
      await addPerson(tx, by, feed);
      return [nurse, feed];
    });
    const found = await shared.store.read((read) => people(read, bay.facilityId));
    expect(found.map((p) => [p.personId, p.name, p.roles.toSorted(), p.wardIds.toSorted(), p.facilityId])).toEqual([
      [bay.personId, "Robin Vale", ["administrator", "prevention"], [], bay.facilityId],
      ...added.map((p) => [p.id, p.name, p.roles.toSorted(), p.wardIds.toSorted(), bay.facilityId]),
    ]);
    const elsewhere = await shared.store.read((read) => people(read, other.facilityId));
    expect(elsewhere.map((p) => p.personId)).toEqual([other.personId]);
  });

  it("who are no longer active are left out", async () => {
    const bay = await alderBay(shared.store);
    await shared.store.tx((tx) => tx.db.person.update({ where: { id: bay.personId }, data: { active: false } }));
    expect(await shared.store.read((read) => people(read, bay.facilityId))).toEqual([]);
  });
});
