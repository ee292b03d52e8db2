import { expect, it } from "vitest";
import type { Month } from "../../shared/day.ts";
import { addScope, changeScope, scopeOf, scopesOfWard } from "../../src/store/scopes.ts";
import { type AlderBay, alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { firstOf } from "../databases/first-of.ts";
import { versionsOf } from "../databases/read-back.ts";
import { faultsOf } from "../databases/refusal.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

const month = (text: string) => text as Month;

onEachDatabase("a scope", (fresh) => {
  const shared = sharedStore(fresh);
  const add = (bay: AlderBay, fromMonth: string, toMonth: string | null = null) =>
    shared.store.tx((tx) =>
      addScope(tx, bay.by("2024-02-01 08:00"), {
        wardId: bay.a,
        fromMonth: month(fromMonth),
        toMonth: toMonth === null ? null : month(toMonth),
        edition: "us-2024",
      }),
    );
  const scopes = (bay: AlderBay) => shared.store.read((read) => scopesOfWard(read, bay.a));

  it("is one of its ward's, in the order of months", async () => {
    const bay = await alderBay(shared.store);
    const later = await add(bay, "2024-06");
    const earlier = await add(bay, "2023-11", "2024-01");
    expect(await scopes(bay)).toEqual([
      { id: earlier, wardId: bay.a, fromMonth: "2023-11", toMonth: "2024-01", edition: "us-2024", version: 1 },
      { id: later, wardId: bay.a, fromMonth: "2024-06", toMonth: null, edition: "us-2024", version: 1 },
    ]);
    expect(await shared.store.read((read) => scopesOfWard(read, bay.b))).toEqual([]);
  });

  it("is found by its id in its own facility alone", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const id = await add(bay, "2024-06");
    expect(
      await shared.store.read((read) => scopeOf(read, bay.facilityId, { wardId: bay.a, scopeId: id })),
    ).toMatchObject({ id });
    const [fault] = await faultsOf(() =>
      shared.store.read((read) => scopeOf(read, other.facilityId, { wardId: bay.a, scopeId: id })),
    );
    expect(fault?.code).toBe("not-found");
    const ofOtherWard = { wardId: bay.b, scopeId: id };
    const [strange] = await faultsOf(() => shared.store.read((read) => scopeOf(read, bay.facilityId, ofOtherWard)));
    expect(strange?.code).toBe("not-found");
  });

  it("can end or be voided; what it said before is kept, and a voided one frees its month", async () => {
    const bay = await alderBay(shared.store);
    const id = await add(bay, "2024-06");
    const change = async (to: Parameters<typeof changeScope>[3], time: string) => {
      const scope = firstOf(await scopes(bay));
      await shared.store.tx((tx) => changeScope(tx, { ...bay.by(time), reason: "ward closes" }, scope, to));
    };
    await change({ toMonth: month("2024-08") }, "2024-02-02 08:00");
    expect(await scopes(bay)).toMatchObject([{ id, toMonth: "2024-08", version: 2 }]);
    await change({ voidReason: "wrong ward" }, "2024-02-03 08:00");
    expect(await scopes(bay)).toEqual([]);
    const [fault] = await faultsOf(() =>
      shared.store.read((read) => scopeOf(read, bay.facilityId, { wardId: bay.a, scopeId: id })),
    );
    expect(fault?.code).toBe("not-found");
    const kept = await versionsOf(shared.store, "scope", id);
    expect(kept.map((v) => [v.version, v.body.toMonth, v.replacedAt, v.replacedBy, v.reason])).toEqual([
      [1, null, utc("2024-02-02 08:00"), bay.personId, "ward closes"],
      [2, "2024-08", utc("2024-02-03 08:00"), bay.personId, "ward closes"],
    ]);
    expect(await add(bay, "2024-06")).not.toBe(id);
  });

  it("cannot begin twice in one month on a ward: the database itself refuses it", async () => {
    const bay = await alderBay(shared.store);
    await add(bay, "2024-06");
    await expect(add(bay, "2024-06")).rejects.toMatchObject({ code: "P2002" });
  });
});
