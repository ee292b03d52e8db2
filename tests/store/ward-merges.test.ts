import { expect, it } from "vitest";
import type { Month } from "../../shared/day.ts";
import { putDailyCounts } from "../../src/store/daily-counts.ts";
import { addScope, scopesOfWard } from "../../src/store/scopes.ts";
import {
  countsOfBoth,
  entriesOfWard,
  isGone,
  mergedInto,
  moveScope,
  moveWardEntries,
  setMerged,
  setVoided,
} from "../../src/store/ward-merges.ts";
import { mergedCodes, wardCodes } from "../../src/store/wards.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";

const reason = "One ward";

onEachDatabase("what a merge of wards stores", (fresh) => {
  const shared = sharedStore(fresh);

  it("is the ward as a record, whose code leads to the last ward of a chain", async () => {
    const { store } = shared;
    const bay = await alderBay(store);
    const by = { ...bay.by("2024-03-01 08:00"), reason };
    const [old, error] = [await bay.addWard("old", "inpatient"), await bay.addWard("error", null)];
    await store.tx(async (tx) => {
      await setMerged(tx, by, { fromId: old, intoId: bay.a });
      await setMerged(tx, by, { fromId: bay.a, intoId: bay.b });
      await setVoided(tx, by, error);
    });
    await store.read(async (read) => {
      expect((await mergedCodes(read, bay.facilityId)).sort()).toEqual([
        ["A", "B"],
        ["old", "B"],
      ]);
      expect((await wardCodes(read, bay.facilityId)).get(old)).toBe("old");
      expect(await mergedInto(read, bay.a)).toMatchObject([{ wardId: old, code: "old", reason }]);
      expect([await isGone(read, bay.facilityId, old), await isGone(read, bay.facilityId, error)]).toEqual([
        true,
        true,
      ]);
      expect([await isGone(read, bay.facilityId, bay.b), await isGone(read, bay.facilityId, 0)]).toEqual([false, null]);
    });
  });

  it("is counts, surveillance and people under the other ward", async () => {
    const { store } = shared;
    const bay = await alderBay(store);
    const by = { ...bay.by("2024-03-01 08:00"), reason };
    const pair = { fromId: bay.a, intoId: bay.b };
    const count = (wardId: number, day: number) => ({ wardId, day, patients: 1, catheters: 0 });
    await store.tx(async (tx) => {
      await putDailyCounts(tx, by, [count(bay.a, 5), count(bay.a, 6), count(bay.b, 6)]);
      await addScope(tx, by, { wardId: bay.a, fromMonth: "2024-01" as Month, toMonth: null, edition: "us-2024" });
      await tx.db.personWard.create({ data: { personId: bay.personId, wardId: bay.a } });
    });
    await store.read(async (read) => {
      expect(await countsOfBoth(read, pair)).toEqual([{ day: 6, isSame: true }]);
      expect(await entriesOfWard(read, bay.facilityId, bay.a)).toMatchObject({
        ...{ "manual counts": 2, "surveillance periods": 1, people: 1, "unit stays": 0 },
      });
    });
    await store.tx(async (tx) => {
      await tx.db.dailyCount.deleteMany({ where: { wardId: bay.b } });
      const [scope] = await scopesOfWard(tx, bay.a);
      if (scope) await moveScope(tx, by, scope, bay.b);
      await moveWardEntries(tx, by, { ...pair, countedTwice: [] });
      expect(await scopesOfWard(tx, bay.b)).toMatchObject([{ fromMonth: "2024-01", version: 2 }]);
      expect(await tx.db.dailyCount.count({ where: { wardId: bay.b } })).toBe(2);
      expect(await tx.db.personWard.count({ where: { wardId: bay.b } })).toBe(1);
    });
  });
});
