import { expect, it } from "vitest";
import { stayIds } from "../../src/store/stay-ids.ts";
import { movePatient } from "../../src/usecases/record/move-patient.ts";
import { voidStay } from "../../src/usecases/record/void-entry.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

const later = "2024-04-01 00:00";

onEachDatabase("ids of stays", (fresh) => {
  const shared = sharedStore(fresh);

  it("are those admitted before an instant that ended from another one on or not yet, in order", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    await other.admit("P1", "2024-03-01 10:00");
    const open = await bay.admit("P1", "2024-03-01 10:00");
    const ended = await bay.stay("P2", "2024-03-01 10:00", "2024-03-02 10:00");
    const voided = await bay.stay("P3", "2024-03-01 10:00", "2024-03-02 10:00");
    await voidStay(bay.at(later), { stayId: voided.stayId, reason: "wrong" });
    const ids = (before: string, from: string | null) =>
      shared.store.read((read) =>
        stayIds(read, {
          facilityId: bay.facilityId,
          admittedBefore: utc(before),
          endedFrom: from === null ? null : utc(from),
        }),
      );
    expect(await ids("2024-03-01 10:00", "2024-01-01 00:00")).toEqual([]);
    expect(await ids("2024-03-01 10:00:00.001", "2024-03-02 10:00")).toEqual([open.stayId, ended.stayId]);
    expect(await ids(later, "2024-03-02 10:00:00.001")).toEqual([open.stayId]);
    expect(await ids(later, null)).toEqual([open.stayId]);
  });

  it("are found by whichever index: stays of 62 days and of more, which ended on the first day of a question", async () => {
    const bay = await alderBay(shared.store);
    const short = await bay.stay("P1", "2024-01-01 10:00", "2024-03-03 10:00");
    const long = await bay.stay("P2", "2024-01-01 10:00", "2024-03-03 10:01");
    const ids = (before: string, from: string) =>
      shared.store.read((read) =>
        stayIds(read, { facilityId: bay.facilityId, admittedBefore: utc(before), endedFrom: utc(from) }),
      );
    expect(await ids(later, "2024-01-02 10:00")).toEqual([short.stayId, long.stayId]);
    expect(await ids(later, "2024-03-03 10:00")).toEqual([short.stayId, long.stayId]);
    expect(await ids(later, "2024-03-03 10:01")).toEqual([long.stayId]);
    expect(await ids("2024-01-01 10:00", "2024-01-01 00:00")).toEqual([]);
  });

  it("are those of some wards when they are named, also of wards that the patient has left", async () => {
    const bay = await alderBay(shared.store);
    const c = await bay.addWard("C", "inpatient");
    const stayed = await bay.admit("P1", "2024-03-01 10:00");
    const moved = await bay.admit("P2", "2024-03-01 10:00");
    await movePatient(bay.at(later), { stayId: moved.stayId, movedAt: utc("2024-03-02 10:00"), wardId: bay.b });
    const on = (...wardIds: number[]) =>
      shared.store.read((read) =>
        stayIds(read, { facilityId: bay.facilityId, admittedBefore: utc(later), endedFrom: utc(later), wardIds }),
      );
    expect(await on(bay.a)).toEqual([stayed.stayId, moved.stayId]);
    expect(await on(bay.b)).toEqual([moved.stayId]);
    expect(await on(bay.b, bay.a, c)).toEqual([stayed.stayId, moved.stayId]);
    expect(await on(c)).toEqual([]);
    expect(await on()).toEqual([]);
  });
});
