import { afterEach, beforeEach, expect, it } from "vitest";
import { openStore } from "../../src/store/open-store.ts";
import type { Store } from "../../src/store/store.ts";
import { firstActor, firstActorOrSetUp, zoneOfFacility } from "../../src/usecases/find-facility.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase, type TestDatabase } from "../databases/databases.ts";
import { auditOf } from "../databases/read-back.ts";
import { utc } from "../databases/utc.ts";

const settings = { name: "Alder Bay Hospital", zone: "America/New_York", censusTime: "07:00" };
const now = utc("2024-01-01 08:00");

onEachDatabase("the facility of an installation", (fresh) => {
  let database: TestDatabase;
  let store: Store;
  beforeEach(async () => {
    database = await fresh();
    store = openStore(database.url);
  });
  afterEach(async () => {
    await store.close();
    await database.drop();
  });

  it("is not there at first, and is set up from the settings once", async () => {
    expect(await firstActor(store)).toBeNull();
    const actor = await firstActorOrSetUp({ store, now }, settings);
    expect(actor.roles.toSorted()).toEqual(["administrator", "prevention"]);
    expect(await zoneOfFacility(store, actor)).toBe("America/New_York");
    const again = await firstActorOrSetUp({ store, now }, { ...settings, zone: "Asia/Tokyo" });
    expect([again.personId, again.facilityId]).toEqual([actor.personId, actor.facilityId]);
    expect(await auditOf(store, actor.facilityId)).toHaveLength(1);
  });

  it("is the first of several, with its first person", async () => {
    const first = await alderBay(store);
    await alderBay(store);
    const found = await firstActor(store);
    expect([found?.facilityId, found?.personId]).toEqual([first.facilityId, first.personId]);
  });

  it("without a person is a broken record", async () => {
    const { personId } = await alderBay(store);
    await store.tx((tx) => tx.db.person.update({ where: { id: personId }, data: { active: false } }));
    await expect(firstActor(store)).rejects.toThrow("has no person");
  });
});
