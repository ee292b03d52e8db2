import { expect, it } from "vitest";
import type { CensusTime } from "../../../shared/day.ts";
import { addCensus } from "../../../src/store/facilities.ts";
import { loadCountingRules } from "../../../src/usecases/months/counting-rules.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { faultsOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";
import { dayOf } from "../../reference/day-text.ts";

const days = { first: dayOf("2024-03-30"), last: dayOf("2024-04-02") };

onEachDatabase("what counting needs to know", (fresh) => {
  const shared = sharedStore(fresh);

  it("is the census of every day asked for, by the time in force on it", async () => {
    const bay = await alderBay(shared.store);
    const noon = { fromDay: dayOf("2024-04-01"), time: "12:00" as CensusTime };
    await shared.store.tx((tx) => addCensus(tx, bay.by("2024-03-01 10:00"), noon));
    const rules = await shared.store.read((read) => loadCountingRules(read, bay.facilityId, () => days));
    expect([...rules.census.days]).toEqual([days.first, days.first + 1, days.first + 2, days.last]);
    expect([...rules.census.instants]).toEqual(
      ["2024-03-30 00:00", "2024-03-31 00:00", "2024-04-01 12:00", "2024-04-02 12:00"].map(utc),
    );
    expect(rules.zone.name).toBe("UTC");
    expect(rules.facility.id).toBe(bay.facilityId);
  });

  it("is which ward was for inpatients on which day", async () => {
    const bay = await alderBay(shared.store);
    const unknown = await bay.addWard("U", null);
    const theater = await bay.addWard("T", "procedure");
    const { isInpatient, wards } = await shared.store.read((read) =>
      loadCountingRules(read, bay.facilityId, () => days),
    );
    expect(wards.map((ward) => ward.code)).toEqual(["A", "B", "T", "U"]);
    expect([bay.a, bay.b, unknown, theater, -1].map((id) => isInpatient(id, days.first))).toEqual([
      true,
      true,
      false,
      false,
      false,
    ]);
    expect(isInpatient(bay.a, -1)).toBe(false);
  });

  it("may be narrowed to some wards; days asked for the wrong way round are the first alone", async () => {
    const bay = await alderBay(shared.store);
    const rules = await shared.store.read((read) =>
      loadCountingRules(read, bay.facilityId, () => ({ first: days.last, last: days.first }), [bay.b]),
    );
    expect(rules.wards.map((ward) => ward.id)).toEqual([bay.b]);
    expect(rules.isInpatient(bay.a, days.first)).toBe(false);
    expect([...rules.census.days]).toEqual([days.last]);
  });

  it("is not there for a facility that is not", async () => {
    const [fault] = await faultsOf(() => shared.store.read((read) => loadCountingRules(read, -1, () => days)));
    expect(fault?.code).toBe("not-found");
  });
});
