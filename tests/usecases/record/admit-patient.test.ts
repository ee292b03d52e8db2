import { expect, it } from "vitest";
import { loadTimeline } from "../../../src/store/timelines.ts";
import { type AdmitPatient, admitPatient } from "../../../src/usecases/record/admit-patient.ts";
import { dischargePatient } from "../../../src/usecases/record/discharge-patient.ts";
import { mergePatients } from "../../../src/usecases/record/merge-patients.ts";
import { voidStay } from "../../../src/usecases/record/void-entry.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf, ledgerOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";
import { dayOf } from "../../reference/day-text.ts";

onEachDatabase("admitting a patient", (fresh) => {
  const shared = sharedStore(fresh);

  function order(bay: AlderBay, identifier: string, number: string, time: string): AdmitPatient {
    return { patient: { identifier }, number, admittedAt: utc(time), wardId: bay.a };
  }

  it("makes the patient, the stay and the first ward stay, with one audit entry and no ledger row yet", async () => {
    const bay = await alderBay(shared.store);
    const act = bay.at("2024-03-01 12:00");
    const input = { ...order(bay, "P1", "S1", "2024-03-01 10:00"), bed: "12" };
    const known = { ...input, patient: { identifier: "P1", birthDay: dayOf("1950-05-06"), sex: "f" } };
    const { patientId, stayId, wardStayId } = await admitPatient(act, known);
    const timeline = await shared.store.read((read) => loadTimeline(read, patientId));
    expect(timeline.stays).toMatchObject([
      {
        id: stayId,
        patientId,
        number: "S1",
        admittedAt: utc("2024-03-01 10:00"),
        dischargedAt: null,
        wardStays: [{ id: wardStayId, wardId: bay.a, bed: "12", startAt: utc("2024-03-01 10:00"), endAt: null }],
      },
    ]);
    const patient = await shared.store.read((read) => read.db.patient.findUnique({ where: { id: patientId } }));
    expect(patient).toMatchObject({ identifier: "P1", birthDay: dayOf("1950-05-06"), sex: "f" });
    expect(await ledgerOf(shared.store, patientId)).toEqual([]);
    expect(await auditOf(shared.store, bay.facilityId, act.now)).toEqual([
      {
        at: act.now,
        personId: bay.personId,
        action: "admit-patient",
        patientIds: [patientId],
        details: { patientId, stayId, wardStayId, wardId: bay.a, version: 1 },
      },
    ]);
  });

  it("refuses a day of birth that has not come yet", async () => {
    const bay = await alderBay(shared.store);
    const born = (day: string) => ({
      ...order(bay, "P1", "S1", "2024-03-01 10:00"),
      patient: { identifier: "P1", birthDay: dayOf(day) },
    });
    const act = bay.at("2024-03-01 12:00");
    expect(await refusalOf(shared.store, () => admitPatient(act, born("2024-03-02")))).toMatchObject({
      ...{ code: "in-the-future", pointer: "/birthDay" },
    });
    await admitPatient(act, born("2024-03-01"));
  });

  it("knows a patient again who was here before", async () => {
    const bay = await alderBay(shared.store);
    const first = await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00");
    const again = await bay.admit("P1", "2024-03-05 10:00");
    expect(again.patientId).toBe(first.patientId);
  });

  it("admits a merged patient under their own record, and counts the days for the survivor", async () => {
    const bay = await alderBay(shared.store);
    const one = await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00");
    const two = await bay.stay("P2", "2024-03-03 10:00", "2024-03-04 10:00");
    await mergePatients(bay.at("2024-03-05 00:00"), { fromId: one.patientId, intoId: two.patientId });
    const again = await bay.stay("P1", "2024-03-06 10:00", "2024-03-07 10:00");
    expect(again.patientId).toBe(one.patientId);
    expect(await ledgerOf(shared.store, two.patientId)).toEqual(["2024-03-02 A", "2024-03-04 A", "2024-03-07 A"]);
  });

  it("refuses a patient who is here already, and names the other stay", async () => {
    const bay = await alderBay(shared.store);
    const open = await bay.admit("P1", "2024-03-01 10:00");
    const second = order(bay, "P1", "N2", "2024-03-02 10:00");
    expect(await refusalOf(shared.store, () => admitPatient(bay.at("2024-03-02 10:00"), second))).toEqual({
      code: "stay-overlaps",
      pointer: "/admittedAt",
      other: `stay ${open.stayId}`,
    });
  });

  it("refuses an earlier admission while a later stay lasts, also for a merged patient", async () => {
    const bay = await alderBay(shared.store);
    const one = await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00");
    const two = await bay.admit("P2", "2024-03-03 10:00");
    await mergePatients(bay.at("2024-03-05 00:00"), { fromId: one.patientId, intoId: two.patientId });
    const overlapping = order(bay, "P1", "N2", "2024-03-02 11:00");
    expect(await refusalOf(shared.store, () => admitPatient(bay.at("2024-03-05 00:00"), overlapping))).toMatchObject({
      code: "stay-overlaps",
      other: `stay ${two.stayId}`,
    });
  });

  it("refuses a number that another stay has, and takes it once that one is voided", async () => {
    const bay = await alderBay(shared.store);
    const first = await bay.admit("P1", "2024-03-01 10:00", { number: "N1" });
    const second = order(bay, "P2", "N1", "2024-03-01 11:00");
    const act = bay.at("2024-03-02 00:00");
    expect(await refusalOf(shared.store, () => admitPatient(act, second))).toEqual({
      code: "stay-number-taken",
      pointer: "/number",
      other: `stay ${first.stayId}`,
    });
    await voidStay(act, { stayId: first.stayId, reason: "wrong patient" });
    expect((await admitPatient(act, second)).stayId).not.toBe(first.stayId);
    const elsewhere = await alderBay(shared.store);
    await elsewhere.admit("P1", "2024-03-01 10:00", { number: "N1" });
  });

  it("lets one of two admissions with one number through, and refuses the other by name", async () => {
    const bay = await alderBay(shared.store);
    const both = await Promise.allSettled(
      ["P1", "P2"].map((name) => bay.admit(name, "2024-03-01 10:00", { number: "N" })),
    );
    const [refused] = both.flatMap((one) => (one.status === "rejected" ? [one.reason] : []));
    expect(both.filter((one) => one.status === "fulfilled")).toHaveLength(1);
    expect(refused).toMatchObject({ code: "stay-number-taken" });
  });

  it("lets one of two admissions of one patient through, and refuses the other by name", async () => {
    const bay = await alderBay(shared.store);
    const both = await Promise.allSettled(
      ["N1", "N2"].map((number) => bay.admit("P1", "2024-03-01 10:00", { number })),
    );
    const [refused] = both.flatMap((one) => (one.status === "rejected" ? [one.reason] : []));
    expect(refused).toMatchObject({ code: "stay-overlaps" });
  });

  it("refuses a ward of another facility, and a time more than five minutes ahead", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const act = bay.at("2024-03-01 10:00");
    const elsewhere = { ...order(bay, "P1", "N1", "2024-03-01 10:00"), wardId: other.a };
    expect(await refusalOf(shared.store, () => admitPatient(act, elsewhere))).toEqual({
      code: "not-found",
      pointer: "/wardId",
    });
    const ahead = order(bay, "P1", "N1", "2024-03-01 10:05:00.001");
    expect(await refusalOf(shared.store, () => admitPatient(act, ahead))).toEqual({
      code: "in-the-future",
      pointer: "/admittedAt",
    });
    const early = await admitPatient(act, order(bay, "P1", "N1", "2024-03-01 10:05"));
    await dischargePatient(bay.at("2024-03-01 11:00"), { ...early, dischargedAt: utc("2024-03-01 11:00") });
  });
});
