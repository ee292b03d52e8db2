import { expect, it } from "vitest";
import { addWard, patientsOfWard, putWardSetting, updateWard, wards } from "../../src/store/wards.ts";
import { mergePatients } from "../../src/usecases/record/merge-patients.ts";
import { movePatient } from "../../src/usecases/record/move-patient.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { firstOf } from "../databases/first-of.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

const said = { name: "Surgery", type: "surgical", setting: "inpatient", beds: 20 } as const;

onEachDatabase("a ward", (fresh) => {
  const shared = sharedStore(fresh);

  it("is stored with its settings in the order of days; the same day is replaced", async () => {
    const bay = await alderBay(shared.store);
    const by = bay.by("2024-02-01 08:00");
    const id = await shared.store.tx(async (tx) => {
      const wardId = await addWard(tx, by, { code: "S", openedDay: 5, namedOnly: true });
      await putWardSetting(tx, by, wardId, { ...said, fromDay: 200 });
      await putWardSetting(tx, by, wardId, { ...said, fromDay: 100, setting: null, type: null, beds: null });
      await putWardSetting(tx, by, wardId, { ...said, fromDay: 200, name: "Day surgery", setting: "procedure" });
      return wardId;
    });
    const ward = firstOf(await shared.store.read((read) => wards(read, bay.facilityId, [id])));
    expect(ward).toMatchObject({ id, code: "S", openedDay: 5, closedDay: null, namedOnly: true, version: 1 });
    expect(ward.settings).toMatchObject([
      { fromDay: 100, name: "Surgery", type: null, setting: null, beds: null, version: 1 },
      { fromDay: 200, name: "Day surgery", type: "surgical", setting: "procedure", beds: 20, version: 2 },
    ]);
  });

  it("changes what is not dated, version by version, and keeps what is not named", async () => {
    const bay = await alderBay(shared.store);
    await shared.store.tx((tx) => updateWard(tx, bay.by("2024-02-01 08:00"), bay.a, { closedDay: 900 }));
    await shared.store.tx((tx) => updateWard(tx, bay.by("2024-02-02 08:00"), bay.a, { openedDay: 1 }));
    const row = await shared.store.read((read) => read.db.ward.findUniqueOrThrow({ where: { id: bay.a } }));
    expect(row).toMatchObject({ code: "A", openedDay: 1, closedDay: 900, namedOnly: false, version: 3 });
    expect(row.recordedAt.getTime()).toBe(utc("2024-02-02 08:00"));
  });

  it("is one of its facility's, by code; two cannot have one code there", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const list = await shared.store.read((read) => wards(read, bay.facilityId));
    expect(list.map((ward) => [ward.id, ward.code])).toEqual([
      [bay.a, "A"],
      [bay.b, "B"],
    ]);
    expect(await shared.store.read((read) => wards(read, bay.facilityId, [other.a, -1]))).toEqual([]);
    const twin = shared.store.tx((tx) => addWard(tx, bay.by("2024-02-01 08:00"), { code: "A", namedOnly: false }));
    await expect(twin).rejects.toMatchObject({ code: "P2002" });
  });

  it("knows the patients who were ever there, each once, merged ones by their survivor", async () => {
    const bay = await alderBay(shared.store);
    const one = await bay.admit("P1", "2024-03-01 10:00");
    await movePatient(bay.at("2024-03-02 10:00"), {
      stayId: one.stayId,
      movedAt: utc("2024-03-02 10:00"),
      wardId: bay.b,
    });
    const two = await bay.stay("P2", "2024-03-01 10:00", "2024-03-02 10:00");
    const three = await bay.stay("P3", "2024-03-03 10:00", "2024-03-04 10:00", { wardId: bay.b });
    await mergePatients(bay.at("2024-03-05 10:00"), { fromId: three.patientId, intoId: two.patientId });
    const on = (wardId: number) => shared.store.read((read) => patientsOfWard(read, wardId));
    expect(await on(bay.a)).toEqual([one.patientId, two.patientId]);
    expect(await on(bay.b)).toEqual([one.patientId, two.patientId]);
    expect(await on(-1)).toEqual([]);
  });
});
