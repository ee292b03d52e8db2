import { expect, it } from "vitest";
import { loadTimeline } from "../../../src/store/timelines.ts";
import { cancelDischarge, dischargePatient } from "../../../src/usecases/record/discharge-patient.ts";
import { movePatient } from "../../../src/usecases/record/move-patient.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf, ledgerOf, versionsOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";

onEachDatabase("discharging a patient", (fresh) => {
  const shared = sharedStore(fresh);

  it("ends the stay and the ward stay, and posts a row for each midnight between", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId, wardStayId } = await bay.admit("P1", "2024-02-28 10:00");
    const act = bay.at("2024-03-02 09:00");
    const dischargedAt = utc("2024-03-02 08:00");
    await dischargePatient(act, { stayId, dischargedAt, disposition: "home" });
    expect(await ledgerOf(shared.store, patientId)).toEqual([...["2024-02-29 A", "2024-03-01 A", "2024-03-02 A"]]);
    const { stays } = await shared.store.read((read) => loadTimeline(read, patientId));
    expect(stays).toMatchObject([
      { version: 2, dischargedAt, disposition: "home", wardStays: [{ id: wardStayId, endAt: dischargedAt }] },
    ]);
    expect(await auditOf(shared.store, bay.facilityId, act.now)).toEqual([
      {
        at: act.now,
        personId: bay.personId,
        action: "discharge-patient",
        patientIds: [patientId],
        details: { stayId, version: 2 },
      },
    ]);
  });

  it("at the very instant of the census does not count that census, and a minute later does", async () => {
    const bay = await alderBay(shared.store);
    const one = await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 00:00");
    const two = await bay.stay("P2", "2024-03-01 10:00", "2024-03-02 00:01");
    expect(await ledgerOf(shared.store, one.patientId)).toEqual([]);
    expect(await ledgerOf(shared.store, two.patientId)).toEqual(["2024-03-02 A"]);
  });

  it("counts the day that ends when the census is at 24:00", async () => {
    const bay = await alderBay(shared.store, "24:00");
    const { patientId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 00:01");
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-01 A"]);
  });

  it("is refused twice, before something that was recorded, in the future, and elsewhere", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const { stayId } = await bay.admit("P1", "2024-03-01 10:00");
    const moved = { stayId, movedAt: utc("2024-03-02 10:00"), wardId: bay.b };
    await movePatient(bay.at("2024-03-02 10:00"), moved);
    const act = bay.at("2024-03-03 10:00");
    const at =
      (time: string, by = act) =>
      () =>
        dischargePatient(by, { stayId, dischargedAt: utc(time) });
    expect(await refusalOf(shared.store, at("2024-03-02 09:00"))).toMatchObject({
      code: "outside-stay",
      other: `stay ${stayId}`,
    });
    expect(await refusalOf(shared.store, at("2024-03-03 10:06"))).toMatchObject({
      code: "in-the-future",
      pointer: "/dischargedAt",
    });
    expect(await refusalOf(shared.store, at("2024-03-03 09:00", other.at("2024-03-03 10:00")))).toMatchObject({
      code: "not-found",
    });
    await at("2024-03-03 09:00")();
    expect(await refusalOf(shared.store, at("2024-03-03 09:30"))).toMatchObject({
      code: "already-discharged",
      other: `stay ${stayId}`,
    });
  });
});

onEachDatabase("cancelling a discharge", (fresh) => {
  const shared = sharedStore(fresh);

  it("opens the stay again, takes its last rows out of the ledger and keeps what was said", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-03 10:00");
    expect(await ledgerOf(shared.store, patientId)).toHaveLength(2);
    const act = bay.at("2024-03-04 10:00");
    await cancelDischarge(act, { stayId, reason: "came back at the door" });
    expect(await ledgerOf(shared.store, patientId)).toEqual([]);
    const { stays } = await shared.store.read((read) => loadTimeline(read, patientId));
    expect(stays).toMatchObject([{ dischargedAt: null, disposition: null, wardStays: [{ endAt: null }] }]);
    const kept = await versionsOf(shared.store, "stay", stayId);
    expect(kept.map((v) => [v.version, v.body.dischargedAt, v.reason])).toEqual([
      [1, null, null],
      [2, utc("2024-03-03 10:00"), "came back at the door"],
    ]);
    expect(await auditOf(shared.store, bay.facilityId, act.now)).toMatchObject([
      { action: "cancel-discharge", patientIds: [patientId], details: { stayId, reason: "came back at the door" } },
    ]);
  });

  it("is refused when there is none, and when the patient was admitted again since", async () => {
    const bay = await alderBay(shared.store);
    const first = await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00");
    const second = await bay.admit("P1", "2024-03-03 10:00");
    const cancel = (stayId: number) => () => cancelDischarge(bay.at("2024-03-04 10:00"), { stayId, reason: "no" });
    expect(await refusalOf(shared.store, cancel(second.stayId))).toMatchObject({
      code: "not-discharged",
      other: `stay ${second.stayId}`,
    });
    expect(await refusalOf(shared.store, cancel(first.stayId))).toMatchObject({
      code: "stay-overlaps",
      other: `stay ${second.stayId}`,
    });
    const other = await alderBay(shared.store);
    const elsewhere = { stayId: first.stayId, reason: "no" };
    expect(await refusalOf(shared.store, () => cancelDischarge(other.at("2024-03-04 10:00"), elsewhere))).toMatchObject(
      {
        code: "not-found",
      },
    );
  });
});
