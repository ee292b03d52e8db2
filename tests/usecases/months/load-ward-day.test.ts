import { expect, it } from "vitest";
import { loadWardDay } from "../../../src/usecases/months/load-ward-day.ts";
import { dischargePatient } from "../../../src/usecases/record/discharge-patient.ts";
import { mergePatients } from "../../../src/usecases/record/merge-patients.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { inserted } from "../../databases/urethral.ts";
import { utc } from "../../databases/utc.ts";
import { dayOf } from "../../reference/day-text.ts";

const day = dayOf("2024-03-02");
const later = "2024-03-10 10:00";

onEachDatabase("the patients behind a ward day", (fresh) => {
  const shared = sharedStore(fresh);
  const read = (bay: AlderBay, wardId = bay.a, now = later) => loadWardDay(bay.at(now), { wardId, day });

  it("are those of the ledger and those still there, by identifier, and that they were seen is written down", async () => {
    const bay = await alderBay(shared.store);
    const here = await bay.admit("P1", "2024-03-01 10:00");
    const gone = await bay.stay("P2", "2024-03-01 10:00", "2024-03-03 10:00");
    await bay.stay("P3", "2024-03-02 10:00", "2024-03-03 10:00");
    await bay.admit("P4", "2024-03-01 10:00", { wardId: bay.b });
    await inserted(bay, "2024-03-03 12:00", here.stayId, "2024-03-01 11:00");
    const act = bay.at(later);
    expect(await read(bay)).toEqual([
      { patientId: here.patientId, identifier: "P1", stayId: here.stayId, catheter: true },
      { patientId: gone.patientId, identifier: "P2", stayId: gone.stayId, catheter: false },
    ]);
    expect(await auditOf(shared.store, bay.facilityId, act.now)).toEqual([
      {
        at: act.now,
        personId: bay.personId,
        action: "view-ward-day",
        patientIds: [here.patientId, gone.patientId],
        details: { wardId: bay.a, day },
      },
    ]);
  });

  it("are named as the survivor after a merge", async () => {
    const bay = await alderBay(shared.store);
    const one = await bay.admit("P1", "2024-03-01 10:00");
    const two = await bay.stay("P2", "2024-02-01 10:00", "2024-02-02 10:00");
    await mergePatients(bay.at("2024-03-09 10:00"), { fromId: one.patientId, intoId: two.patientId });
    const expected = [{ patientId: two.patientId, identifier: "P2", stayId: one.stayId, catheter: false }];
    expect(await read(bay)).toEqual(expected);
    await dischargePatient(bay.at("2024-03-09 11:00"), { stayId: one.stayId, dischargedAt: utc("2024-03-09 11:00") });
    expect(await read(bay)).toEqual(expected);
  });

  it("are nobody before the census, on an empty ward, and on a ward that is not for inpatients", async () => {
    const bay = await alderBay(shared.store);
    const theater = await bay.addWard("T", "procedure");
    await bay.admit("P1", "2024-03-01 10:00");
    await bay.admit("P2", "2024-03-01 10:00", { wardId: theater });
    expect(await read(bay, bay.a, "2024-03-01 23:59:59.999")).toEqual([]);
    expect(await read(bay, bay.b)).toEqual([]);
    expect(await read(bay, theater)).toEqual([]);
  });

  it("are not shown of a ward of another facility, and the try leaves no trace of patients", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    await bay.admit("P1", "2024-03-01 10:00");
    expect(await refusalOf(shared.store, () => read(other, bay.a))).toMatchObject({ code: "not-found" });
    expect(await refusalOf(shared.store, () => read(other, -1))).toMatchObject({ code: "not-found" });
  });

  it("are neither lost nor doubled while they are discharged", async () => {
    const bay = await alderBay(shared.store);
    const admitted = [];
    for (let i = 0; i < 6; i++) admitted.push(await bay.admit(`P${i}`, "2024-03-01 10:00"));
    const dischargedAt = utc("2024-03-09 10:00");
    const discharges = admitted.map(({ stayId }) => dischargePatient(bay.at(later), { stayId, dischargedAt }));
    const reads = Array.from({ length: 10 }, () => read(bay));
    await Promise.all(discharges);
    for (const patients of await Promise.all(reads))
      expect(patients.map((p) => p.identifier)).toEqual(["P0", "P1", "P2", "P3", "P4", "P5"]);
  });
});
