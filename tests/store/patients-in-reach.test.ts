import { expect, it } from "vitest";
import { patientsInReach } from "../../src/store/patients-in-reach.ts";
import { mergePatients } from "../../src/usecases/record/merge-patients.ts";
import { movePatient } from "../../src/usecases/record/move-patient.ts";
import { voidStay, voidWardStay } from "../../src/usecases/record/void-entry.ts";
import { type AlderBay, alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

const reason = "written down on the wrong line";

onEachDatabase("patients within reach of wards", (fresh) => {
  const shared = sharedStore(fresh);
  const reached = ({ facilityId }: AlderBay, patientIds: number[], wardIds: number[], since = "2024-03-05 10:00") =>
    shared.store.read((read) => patientsInReach(read, facilityId, { patientIds, wardIds, since: utc(since) }));

  it("are on one of them, or left it at the instant or later", async () => {
    const bay = await alderBay(shared.store);
    const { a, b } = bay;
    const left = await bay.stay("P1", "2024-03-01 10:00", "2024-03-05 10:00");
    const here = await bay.admit("P2", "2024-03-01 10:00");
    const north = await bay.admit("P3", "2024-03-01 10:00", { wardId: b });
    const all = [left.patientId, here.patientId, north.patientId];
    expect((await reached(bay, all, [a])).toSorted()).toEqual([left.patientId, here.patientId].toSorted());
    expect(await reached(bay, all, [a], "2024-03-05 10:00:00.001")).toEqual([here.patientId]);
    expect(await reached(bay, all, [b])).toEqual([north.patientId]);
    expect(await reached(bay, [...all, ...all], [a, b])).toHaveLength(3);
    expect(await reached(bay, [north.patientId], [a])).toEqual([]);
    expect(await reached(bay, all, [])).toEqual([]);
    expect(await reached(bay, [], [a])).toEqual([]);
  });

  it("are reached through a record that was merged into theirs", async () => {
    const bay = await alderBay(shared.store);
    const merged = await bay.stay("P1", "2024-03-01 10:00", "2024-03-05 12:00");
    const survivor = await bay.admit("P2", "2024-03-06 10:00", { wardId: bay.b });
    expect(await reached(bay, [survivor.patientId], [bay.a])).toEqual([]);
    await mergePatients(bay.at("2024-03-07 10:00"), { fromId: merged.patientId, intoId: survivor.patientId });
    expect(await reached(bay, [survivor.patientId], [bay.a])).toEqual([survivor.patientId]);
    // It is no survivor any more: whoever asks has to ask for the survivor.
    expect(await reached(bay, [merged.patientId], [bay.a])).toEqual([]);
  });

  it("are not reached through voided entries, nor in another facility", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const act = bay.at("2024-03-05 11:00");
    const voided = await bay.admit("P1", "2024-03-01 10:00");
    const { patientId, stayId } = await bay.admit("P2", "2024-03-01 10:00");
    const moved = await movePatient(act, { stayId, movedAt: utc("2024-03-03 10:00"), wardId: bay.b });
    expect(await reached(bay, [patientId], [bay.b])).toEqual([patientId]);
    await voidWardStay(act, { wardStayId: moved.wardStayId, reason });
    expect(await reached(bay, [patientId], [bay.b])).toEqual([]);
    expect(await reached(bay, [voided.patientId], [bay.a])).toEqual([voided.patientId]);
    await voidStay(act, { stayId: voided.stayId, reason });
    expect(await reached(bay, [voided.patientId], [bay.a])).toEqual([]);
    expect(await reached(other, [patientId], [bay.a], "2024-03-01 00:00")).toEqual([]);
  });
});
