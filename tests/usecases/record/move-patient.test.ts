import { expect, it } from "vitest";
import { loadTimeline } from "../../../src/store/timelines.ts";
import { dischargePatient } from "../../../src/usecases/record/discharge-patient.ts";
import { movePatient } from "../../../src/usecases/record/move-patient.ts";
import { recordAbsence } from "../../../src/usecases/record/record-absence.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf, ledgerOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";

onEachDatabase("moving a patient", (fresh) => {
  const shared = sharedStore(fresh);

  it("ends the time on the old ward, whose days are posted, and begins it on the new one", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId, wardStayId } = await bay.admit("P1", "2024-03-01 10:00");
    const act = bay.at("2024-03-03 12:00");
    const movedAt = utc("2024-03-03 11:00");
    const moved = await movePatient(act, { stayId, movedAt, wardId: bay.b, bed: "3" });
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-02 A", "2024-03-03 A"]);
    const { stays } = await shared.store.read((read) => loadTimeline(read, patientId));
    expect(stays[0]?.wardStays).toMatchObject([
      { id: wardStayId, wardId: bay.a, endAt: movedAt, version: 2 },
      { id: moved.wardStayId, wardId: bay.b, bed: "3", startAt: movedAt, endAt: null, version: 1 },
    ]);
    expect(await auditOf(shared.store, bay.facilityId, act.now)).toEqual([
      {
        at: act.now,
        personId: bay.personId,
        action: "move-patient",
        patientIds: [patientId],
        details: { stayId, wardId: bay.b, wardStayId: moved.wardStayId, version: 1 },
      },
    ]);
  });

  it("written down late is put where it belongs, and the days are counted anew", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-05 10:00");
    const late = { stayId, movedAt: utc("2024-03-02 12:00"), wardId: bay.b };
    await movePatient(bay.at("2024-03-06 10:00"), late);
    expect(await ledgerOf(shared.store, patientId)).toEqual([
      "2024-03-02 A",
      "2024-03-03 B",
      "2024-03-04 B",
      "2024-03-05 B",
    ]);
  });

  it("brings a patient back from time off the wards", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await bay.admit("P1", "2024-03-01 10:00");
    await recordAbsence(bay.at("2024-03-02 12:00"), { stayId, leftAt: utc("2024-03-02 12:00"), kind: "leave" });
    const back = { stayId, movedAt: utc("2024-03-04 12:00"), wardId: bay.b };
    await movePatient(bay.at("2024-03-04 12:00"), back);
    await dischargePatient(bay.at("2024-03-05 12:00"), { stayId, dischargedAt: utc("2024-03-05 12:00") });
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-02 A", "2024-03-05 B"]);
  });

  it("to a ward that is no inpatient ward earns no days there", async () => {
    const bay = await alderBay(shared.store);
    const theater = await bay.addWard("T", "procedure");
    const nobodyKnows = await bay.addWard("U", null);
    const { patientId, stayId } = await bay.admit("P1", "2024-03-01 10:00");
    const steps = [
      ["2024-03-02 12:00", theater],
      ["2024-03-03 12:00", nobodyKnows],
      ["2024-03-04 12:00", bay.b],
    ] as const;
    for (const [time, wardId] of steps) await movePatient(bay.at(time), { stayId, movedAt: utc(time), wardId });
    await dischargePatient(bay.at("2024-03-05 12:00"), { stayId, dischargedAt: utc("2024-03-05 12:00") });
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-02 A", "2024-03-05 B"]);
  });

  it("is refused outside the stay, in the future, to an unknown ward, and from elsewhere", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const { stayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-03 10:00");
    const act = bay.at("2024-03-04 10:00");
    const to = (time: string, wardId = bay.b, by = act) =>
      refusalOf(shared.store, () => movePatient(by, { stayId, movedAt: utc(time), wardId }));
    const outside = { code: "outside-stay", pointer: "/movedAt", other: `stay ${stayId}` };
    expect(await to("2024-03-01 09:59")).toMatchObject(outside);
    expect(await to("2024-03-03 10:00")).toMatchObject(outside);
    expect(await to("2024-03-04 10:06")).toMatchObject({ code: "in-the-future", pointer: "/movedAt" });
    expect(await to("2024-03-02 10:00", other.a)).toMatchObject({ code: "not-found", pointer: "/toWardId" });
    expect(await to("2024-03-02 10:00", other.a, other.at("2024-03-04 10:00"))).toMatchObject({ code: "not-found" });
  });
});
