import { expect, it } from "vitest";
import { ownersOfStays, stayNumberTaken } from "../../src/store/stays.ts";
import { mergePatients } from "../../src/usecases/record/merge-patients.ts";
import { voidStay } from "../../src/usecases/record/void-entry.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";

onEachDatabase("the number of a stay", (fresh) => {
  const shared = sharedStore(fresh);
  const taken = (facilityId: number, number: string) =>
    shared.store.read((read) => stayNumberTaken(read, facilityId, number));

  it("is taken in its own facility alone, and free again once the stay is voided, as often as that happens", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    expect(await taken(bay.facilityId, "N1")).toBeNull();
    for (let day = 1; day <= 3; day++) {
      const { stayId } = await bay.admit("P1", `2024-03-0${day} 10:00`, { number: "N1" });
      expect(await taken(bay.facilityId, "N1")).toBe(stayId);
      expect(await taken(other.facilityId, "N1")).toBeNull();
      await voidStay(bay.at(`2024-03-0${day} 11:00`), { stayId, reason: "wrong patient" });
      expect(await taken(bay.facilityId, "N1")).toBeNull();
    }
  });

  it("cannot stand twice in a facility: the database itself refuses it", async () => {
    const bay = await alderBay(shared.store);
    await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00", { number: "N1" });
    const copy = `INSERT INTO stay (id, facility_id, patient_id, number, admitted_at, recorded_at, recorded_by)
      SELECT id + 500, facility_id, patient_id, number, admitted_at, recorded_at, recorded_by FROM stay
      WHERE facility_id = ${bay.facilityId}`;
    await expect(shared.store.tx((tx) => tx.db.$executeRawUnsafe(copy))).rejects.toThrow(/[Uu]nique|UNIQUE/);
  });

  it("leads to the patient whose days it makes, over merges", async () => {
    const bay = await alderBay(shared.store);
    const one = await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00", { number: "N1" });
    const two = await bay.stay("P2", "2024-03-03 10:00", "2024-03-04 10:00", { number: "N2" });
    const gone = await bay.stay("P3", "2024-03-01 10:00", "2024-03-04 10:00", { number: "N3" });
    await voidStay(bay.at("2024-03-05 00:00"), { stayId: gone.stayId, reason: "twice" });
    await mergePatients(bay.at("2024-03-05 00:00"), { fromId: one.patientId, intoId: two.patientId });
    const owners = await shared.store.read((read) => ownersOfStays(read, bay.facilityId, ["N1", "N2", "N3", "N4"]));
    expect([...owners]).toEqual([
      ["N1", { stayId: one.stayId, survivorId: two.patientId, identifier: "P1" }],
      ["N2", { stayId: two.stayId, survivorId: two.patientId, identifier: "P2" }],
    ]);
  });

  it("can be asked about for thousands at once", async () => {
    const bay = await alderBay(shared.store);
    const one = await bay.admit("P1", "2024-03-01 10:00", { number: "N1999" });
    const numbers = Array.from({ length: 2000 }, (_, i) => `N${i}`);
    const owners = await shared.store.read((read) => ownersOfStays(read, bay.facilityId, numbers));
    expect([...owners]).toEqual([["N1999", { stayId: one.stayId, survivorId: one.patientId, identifier: "P1" }]]);
  });
});
