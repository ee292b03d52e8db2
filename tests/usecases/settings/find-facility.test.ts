import { afterEach, beforeEach, expect, it } from "vitest";
import type { CensusTime } from "../../../shared/day.ts";
import { openStore } from "../../../src/store/open-store.ts";
import type { Store } from "../../../src/store/store.ts";
import { addWard } from "../../../src/store/wards.ts";
import {
  firstActor,
  firstActorOrSetUp,
  isDemo,
  refuseDemo,
  wardsWithoutSetting,
  zoneOfFacility,
} from "../../../src/usecases/settings/find-facility.ts";
import { setUpFacility } from "../../../src/usecases/settings/set-up-facility.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase, type TestDatabase } from "../../databases/databases.ts";
import { auditOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { utc } from "../../databases/utc.ts";

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

  it("is the demo when it was set up as such, and then takes nobody's own record", async () => {
    expect(await isDemo(store)).toBe(false);
    await refuseDemo(store);
    await alderBay(store);
    expect(await isDemo(store)).toBe(false);
    await refuseDemo(store);
    const person = { name: "Robin Vale", roles: ["prevention"] } as const;
    const { name, zone } = settings;
    await setUpFacility({ store, now }, { name, zone, censusTime: "00:00" as CensusTime, demo: true, person });
    expect(await isDemo(store)).toBe(true);
    expect(await refusalOf(store, () => refuseDemo(store))).toEqual({ code: "demo-record", pointer: "" });
  });

  it("names the wards of which nobody said what they are, in order", async () => {
    const bay = await alderBay(store);
    const { actor } = bay.at("2024-01-01 08:00");
    expect(await wardsWithoutSetting(store, actor)).toEqual([]);
    await bay.addWard("T", "procedure");
    await bay.addWard("Z", null);
    await store.tx((tx) => addWard(tx, bay.by("2024-01-01 08:00"), { code: "ICU", namedOnly: true }));
    const other = await alderBay(store);
    await other.addWard("X", null);
    expect(await wardsWithoutSetting(store, actor)).toEqual(["ICU", "Z"]);
  });
});
