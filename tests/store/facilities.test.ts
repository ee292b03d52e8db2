import { expect, it } from "vitest";
import type { CensusTime } from "../../shared/day.ts";
import {
  addCensus,
  addFacility,
  facilities,
  facility,
  hasStays,
  lockFacility,
  replaceCensus,
  updateFacility,
} from "../../src/store/facilities.ts";
import { voidStay } from "../../src/usecases/record/void-entry.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { gate } from "../databases/gate.ts";
import { faultsOf } from "../databases/refusal.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

const noon = "12:00" as CensusTime;
const midnight = "24:00" as CensusTime;

onEachDatabase("a facility", (fresh) => {
  const shared = sharedStore(fresh);
  const read = (id: number) => shared.store.read((r) => facility(r, id));

  it("is stored with its first census time, which holds from the first day on", async () => {
    const id = await shared.store.tx(async (tx) => {
      const by = { facilityId: tx.newId(), personId: tx.newId(), now: utc("2024-01-01 08:00") };
      await addFacility(tx, by, { name: "O'Brien Infirmary", zone: "America/Denver", censusTime: midnight });
      return by.facilityId;
    });
    const found = await read(id);
    expect(found).toMatchObject({ id, name: "O'Brien Infirmary", zone: "America/Denver", version: 1 });
    expect(found.census).toMatchObject([{ fromDay: 0, time: "24:00", version: 1 }]);
  });

  it("that is not there is refused", async () => {
    const [fault] = await faultsOf(() => read(-1));
    expect(fault?.code).toBe("not-found");
  });

  it("has census times in the order of days, one for a day; the same day is replaced", async () => {
    const bay = await alderBay(shared.store);
    const by = bay.by("2024-02-01 08:00");
    const id = await shared.store.tx((tx) => addCensus(tx, by, { fromDay: 300, time: noon }));
    await shared.store.tx((tx) => addCensus(tx, by, { fromDay: 200, time: midnight }));
    await shared.store.tx((tx) => replaceCensus(tx, by, { id, time: midnight }));
    const { census } = await read(bay.facilityId);
    expect(census.map((c) => [c.fromDay, c.time, c.version])).toEqual([
      [0, "00:00", 1],
      [200, "24:00", 1],
      [300, "24:00", 2],
    ]);
    const twice = shared.store.tx((tx) => addCensus(tx, by, { fromDay: 300, time: noon }));
    await expect(twice).rejects.toMatchObject({ code: "P2002" });
  });

  it("changes its name or zone without touching the rest", async () => {
    const bay = await alderBay(shared.store);
    await shared.store.tx((tx) => updateFacility(tx, bay.facilityId, { name: "New name" }));
    await shared.store.tx((tx) => updateFacility(tx, bay.facilityId, { zone: "Asia/Tokyo" }));
    expect(await read(bay.facilityId)).toMatchObject({ name: "New name", zone: "Asia/Tokyo" });
  });

  it("is in use once anything was admitted, also when that was voided; others do not count", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const inUse = () => shared.store.read((r) => hasStays(r, bay.facilityId));
    await other.admit("P1", "2024-03-01 10:00");
    expect(await inUse()).toBe(false);
    const { stayId } = await bay.admit("P1", "2024-03-01 10:00");
    expect(await inUse()).toBe(true);
    await voidStay(bay.at("2024-03-01 11:00"), { stayId, reason: "wrong" });
    expect(await inUse()).toBe(true);
  });

  it("is taken by one change of its rules at a time, which counts its version up", async () => {
    const bay = await alderBay(shared.store);
    const { version } = await read(bay.facilityId);
    const [locked, go] = [gate(), gate()];
    const first = shared.store.tx(async (tx) => {
      await lockFacility(tx, bay.facilityId);
      locked.open();
      await go.opened;
      await updateFacility(tx, bay.facilityId, { name: "First" });
    });
    await locked.opened;
    const second = shared.store.tx((tx) => lockFacility(tx, bay.facilityId));
    go.open();
    await first;
    expect(await second).toMatchObject({ name: "First", version: version + 2 });
  });

  it("is one of those of the installation, in the order in which they came", async () => {
    const ids = (await shared.store.read(facilities)).map((f) => f.id);
    expect(ids.length).toBeGreaterThan(5);
    expect(ids).toEqual(ids.toSorted((a, b) => a - b));
  });
});
