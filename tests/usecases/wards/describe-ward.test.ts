import { expect, it } from "vitest";
import type { WardSetting } from "../../../shared/vocabulary.ts";
import { wards } from "../../../src/store/wards.ts";
import { movePatient } from "../../../src/usecases/record/move-patient.ts";
import { describeWard } from "../../../src/usecases/wards/describe-ward.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { firstOf } from "../../databases/first-of.ts";
import { auditOf, ledgerOf, versionsOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";
import { dayOf } from "../../reference/day-text.ts";

const later = "2024-03-10 10:00";

onEachDatabase("describing a ward", (fresh) => {
  const shared = sharedStore(fresh);
  const read = async (bay: AlderBay, id: number) =>
    firstOf(await shared.store.read((r) => wards(r, bay.facilityId, [id])));

  function describe(bay: AlderBay, from: string, setting: WardSetting | null, time = later) {
    const said = { name: "Ward A", type: null, setting, beds: null, fromDay: dayOf(from) };
    return describeWard(bay.at(time), { wardId: bay.a, ...said, reason: "rebuilt" });
  }

  it("is what it is from that day on, with an audit entry", async () => {
    const bay = await alderBay(shared.store);
    const act = bay.at(later);
    const said = { name: "Surgery", type: "surgical", setting: "inpatient", beds: 20, fromDay: 19_000 } as const;
    expect(await describeWard(act, { wardId: bay.a, ...said, reason: "Rebuilt" })).toEqual({ wardId: bay.a });
    expect((await read(bay, bay.a)).settings.slice(1)).toMatchObject([{ ...said, byHand: true, version: 1 }]);
    expect(await auditOf(shared.store, bay.facilityId, act.now)).toEqual([
      {
        at: act.now,
        personId: bay.personId,
        action: "describe-ward",
        patientIds: [],
        details: { wardId: bay.a, fromDay: 19_000, setting: "inpatient", reason: "Rebuilt" },
      },
    ]);
  });

  it("as a procedure area takes its days out of the ledger, and back as an inpatient ward puts them in again", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-05 10:00");
    const moved = { stayId, movedAt: utc("2024-03-03 10:00"), wardId: bay.b };
    await movePatient(bay.at("2024-03-05 11:00"), moved);
    const before = ["2024-03-02 A", "2024-03-03 A", "2024-03-04 B", "2024-03-05 B"];
    expect(await ledgerOf(shared.store, patientId)).toEqual(before);
    await describe(bay, "1970-01-01", "procedure");
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-04 B", "2024-03-05 B"]);
    await describe(bay, "1970-01-01", null, "2024-03-10 11:00");
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-04 B", "2024-03-05 B"]);
    await describe(bay, "1970-01-01", "inpatient", "2024-03-10 12:00");
    expect(await ledgerOf(shared.store, patientId)).toEqual(before);
  });

  it("from a day on changes the days from then on alone", async () => {
    const bay = await alderBay(shared.store);
    const { patientId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-05 10:00");
    await describe(bay, "2024-03-04", "outpatient");
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-02 A", "2024-03-03 A"]);
    await describe(bay, "2024-03-05", "inpatient", "2024-03-10 11:00");
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-02 A", "2024-03-03 A", "2024-03-05 A"]);
  });

  it("with a census at 24:00 changes the day that is named, which ends with that census", async () => {
    const bay = await alderBay(shared.store, "24:00");
    const { patientId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-04 10:00");
    await describe(bay, "2024-03-02", "outpatient");
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-01 A"]);
  });

  it("keeps what was said before, of the ward and of the setting, with who, when and why", async () => {
    const bay = await alderBay(shared.store);
    await describe(bay, "1970-01-01", "procedure");
    const { settings } = await read(bay, bay.a);
    const away = { version: 1, replacedAt: utc(later), replacedBy: bay.personId, reason: "rebuilt" };
    expect(await versionsOf(shared.store, "ward-setting", firstOf(settings).id)).toMatchObject([
      { ...away, body: { setting: "inpatient", name: "Ward A" } },
    ]);
    expect(await versionsOf(shared.store, "ward", bay.a)).toMatchObject([{ ...away, body: { code: "A" } }]);
    await describe(bay, "2024-05-01", "inpatient", "2024-03-10 11:00");
    expect((await read(bay, bay.a)).settings.map((s) => [s.fromDay, s.setting, s.version])).toEqual([
      [0, "procedure", 2],
      [dayOf("2024-05-01"), "inpatient", 1],
    ]);
  });

  it("recounts every patient who was there, and those of other facilities not at all", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const elsewhere = await other.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00");
    const ids: number[] = [];
    for (let i = 0; i < 12; i++) ids.push((await bay.stay(`P${i}`, "2024-03-01 10:00", "2024-03-02 10:00")).patientId);
    await describe(bay, "1970-01-01", "procedure");
    for (const id of ids) expect(await ledgerOf(shared.store, id)).toEqual([]);
    expect(await ledgerOf(shared.store, elsewhere.patientId)).toEqual(["2024-03-02 A"]);
  });

  it("while patients of the ward are discharged leaves every day counted by the rules in force at the end", async () => {
    const bay = await alderBay(shared.store);
    const stays = ["P1", "P2", "P3", "P4"].map((name) => bay.stay(name, "2024-03-01 10:00", "2024-03-02 10:00"));
    const described = describe(bay, "1970-01-01", "procedure");
    const admitted = await Promise.all(stays);
    await described;
    for (const { patientId } of admitted) expect(await ledgerOf(shared.store, patientId)).toEqual([]);
  });

  it("is refused for a ward of elsewhere", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    expect(await refusalOf(shared.store, () => describe({ ...bay, a: other.a }, "2024-01-01", "inpatient"))).toEqual({
      code: "not-found",
      pointer: "/wardId",
    });
  });
});
