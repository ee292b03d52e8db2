import { expect, it } from "vitest";
import { defaultPolicy } from "../../src/domain/policy/default-policy.ts";
import { addPolicy, type PolicyRow, policies } from "../../src/store/policies.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

onEachDatabase("policies", (fresh) => {
  const shared = sharedStore(fresh);
  const all = (facilityId: number) => shared.store.read((read) => policies(read, facilityId));
  const first: Omit<PolicyRow, "recordedAt" | "recordedBy" | "id"> = {
    ...{ wardId: null, number: 1, fromDay: 19_800, body: defaultPolicy, reason: 'Agreed, "all"\nof it' },
  };

  it("are given back as they were set, to their facility alone", async () => {
    const { facilityId, personId, by } = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const id = await shared.store.tx(async (tx) => {
      const drawn = tx.newId();
      await addPolicy(tx, by("2024-03-01 08:00"), { ...first, id: drawn });
      return drawn;
    });
    const recorded = { recordedAt: utc("2024-03-01 08:00"), recordedBy: personId };
    expect(await all(facilityId)).toEqual([{ ...first, ...recorded, id }]);
    expect(await all(other.facilityId)).toEqual([]);
  });

  it("are in the order of their numbers, whatever ids the programs that set them drew", async () => {
    const { facilityId, a, by } = await alderBay(shared.store);
    await shared.store.tx(async (tx) => {
      const [low, middle, high] = [tx.newId(), tx.newId(), tx.newId()];
      await addPolicy(tx, by("2024-03-01 08:00"), { ...first, id: high });
      await addPolicy(tx, by("2024-03-01 08:00"), { ...first, id: middle, wardId: a });
      await addPolicy(tx, by("2024-03-02 08:00"), { ...first, id: low, number: 2, body: null });
    });
    expect((await all(facilityId)).map(({ wardId, number, body }) => [wardId, number, body === null])).toEqual([
      [null, 1, false],
      [null, 2, true],
      [a, 1, false],
    ]);
  });

  it("have each number once", async () => {
    const { facilityId, b, by } = await alderBay(shared.store);
    const add = () =>
      shared.store.tx((tx) => addPolicy(tx, by("2024-03-01 08:00"), { ...first, id: tx.newId(), wardId: b }));
    await add();
    await expect(add()).rejects.toThrow();
    expect(await all(facilityId)).toHaveLength(1);
  });
});
