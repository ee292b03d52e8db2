import { expect, it } from "vitest";
import type { CensusTime } from "../../../shared/day.ts";
import { facility } from "../../../src/store/facilities.ts";
import { people } from "../../../src/store/people.ts";
import { type SetUpFacility, setUpFacility } from "../../../src/usecases/settings/set-up-facility.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";

const now = utc("2024-01-01 08:00");
const plan: SetUpFacility = {
  name: "Alder Bay Hospital",
  zone: "America/New_York",
  censusTime: "07:00" as CensusTime,
  person: { name: "Robin Vale", roles: ["prevention", "administrator"] },
};

onEachDatabase("setting up a facility", (fresh) => {
  const shared = sharedStore(fresh);

  it("makes it with its census time and first person, who is the one who did it", async () => {
    const actor = await setUpFacility({ store: shared.store, now }, plan);
    expect(actor).toMatchObject({ roles: ["prevention", "administrator"], wardIds: [] });
    const found = await shared.store.read((read) => facility(read, actor.facilityId));
    expect(found).toMatchObject({ name: plan.name, zone: plan.zone, census: [{ fromDay: 0, time: "07:00" }] });
    const [person] = await shared.store.read((read) => people(read, actor.facilityId));
    expect(person).toMatchObject({ personId: actor.personId, name: "Robin Vale" });
    expect(await auditOf(shared.store, actor.facilityId)).toEqual([
      {
        at: now,
        personId: actor.personId,
        action: "set-up-facility",
        patientIds: [],
        details: { zone: "America/New_York", census: "07:00" },
      },
    ]);
  });

  it("may be done for several, which are apart", async () => {
    const one = await setUpFacility({ store: shared.store, now }, plan);
    const two = await setUpFacility({ store: shared.store, now }, plan);
    expect(new Set([one.facilityId, two.facilityId, one.personId, two.personId]).size).toBe(4);
    expect(await auditOf(shared.store, two.facilityId)).toHaveLength(1);
  });

  it.each<[string, Partial<SetUpFacility>, object]>([
    ["an unknown zone", { zone: "Mars/Olympus" }, { code: "zone-unknown" }],
    ["no name", { name: "  " }, { code: "field-missing", pointer: "/name" }],
    [
      "no census time",
      { censusTime: "25:00" as CensusTime },
      { code: "census-time-unreadable", pointer: "/censusTime" },
    ],
  ])("is refused with %s", async (_what, wrong, fault) => {
    const work = async () => setUpFacility({ store: shared.store, now }, { ...plan, ...wrong });
    expect(await refusalOf(shared.store, work)).toMatchObject(fault);
  });
});
