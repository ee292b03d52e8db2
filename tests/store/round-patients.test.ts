import { expect, it } from "vitest";
import { patientsOnWards } from "../../src/store/round-patients.ts";
import { mergePatients } from "../../src/usecases/record/merge-patients.ts";
import { movePatient } from "../../src/usecases/record/move-patient.ts";
import { recordAbsence } from "../../src/usecases/record/record-absence.ts";
import { voidStay, voidWardStay } from "../../src/usecases/record/void-entry.ts";
import { type AlderBay, alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

const reason = "written down on the wrong line";

onEachDatabase("the patients on a ward", (fresh) => {
  const shared = sharedStore(fresh);
  const on = async ({ facilityId }: AlderBay, wardId: number, time: string) =>
    [
      ...(
        await shared.store.read((read) => patientsOnWards(read, facilityId, { wardIds: [wardId], at: utc(time) }))
      ).values(),
    ].sort();

  it("are there from the instant at which they come until the one at which they leave", async () => {
    const bay = await alderBay(shared.store);
    const { stayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-05 10:00");
    await movePatient(bay.at("2024-03-05 11:00"), { stayId, movedAt: utc("2024-03-03 12:00"), wardId: bay.b });
    await bay.admit("P2", "2024-03-04 10:00");
    expect(await on(bay, bay.a, "2024-03-01 09:59")).toEqual([]);
    expect(await on(bay, bay.a, "2024-03-01 10:00")).toEqual(["P1"]);
    expect(await on(bay, bay.a, "2024-03-03 12:00")).toEqual([]);
    expect(await on(bay, bay.b, "2024-03-03 12:00")).toEqual(["P1"]);
    expect(await on(bay, bay.b, "2024-03-05 10:00")).toEqual([]);
    expect(await on(bay, bay.a, "2024-03-09 10:00")).toEqual(["P2"]);
  });

  it("are there while a bed is held during a procedure, and not during a leave or after the discharge", async () => {
    const bay = await alderBay(shared.store);
    const leftAt = utc("2024-03-02 10:00");
    const procedure = await bay.stay("P1", "2024-03-01 10:00", "2024-03-05 10:00");
    await recordAbsence(bay.at("2024-03-05 11:00"), { stayId: procedure.stayId, leftAt, kind: "procedure" });
    const leave = await bay.admit("P2", "2024-03-01 10:00");
    await recordAbsence(bay.at("2024-03-05 11:00"), { stayId: leave.stayId, leftAt, kind: "leave" });
    expect(await on(bay, bay.a, "2024-03-02 09:59")).toEqual(["P1", "P2"]);
    expect(await on(bay, bay.a, "2024-03-02 10:00")).toEqual(["P1"]);
    expect(await on(bay, bay.a, "2024-03-05 10:00")).toEqual([]);
  });

  it("are told by their surviving record, once", async () => {
    const bay = await alderBay(shared.store);
    const old = await bay.stay("P1", "2024-03-01 10:00", "2024-03-03 10:00");
    const here = await bay.admit("P2", "2024-03-04 10:00");
    await mergePatients(bay.at("2024-03-05 10:00"), { fromId: here.patientId, intoId: old.patientId });
    expect(await on(bay, bay.a, "2024-03-02 10:00")).toEqual(["P1"]);
    expect(await on(bay, bay.a, "2024-03-05 10:00")).toEqual(["P1"]);
  });

  it("are not there by entries that were voided, nor on wards of another facility", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const act = bay.at("2024-03-05 10:00");
    const voided = await bay.admit("P1", "2024-03-01 10:00");
    await voidStay(act, { stayId: voided.stayId, reason });
    const { stayId } = await bay.admit("P2", "2024-03-01 10:00");
    const moved = await movePatient(act, { stayId, movedAt: utc("2024-03-03 10:00"), wardId: bay.b });
    await voidWardStay(act, { wardStayId: moved.wardStayId, reason });
    expect(await on(bay, bay.a, "2024-03-02 10:00")).toEqual(["P2"]);
    expect(await on(bay, bay.b, "2024-03-04 10:00")).toEqual([]);
    expect(await on(other, bay.a, "2024-03-02 10:00")).toEqual([]);
  });
});
