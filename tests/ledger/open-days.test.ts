import { expect, it } from "vitest";
import { loadMonth } from "../../src/usecases/months/load-month.ts";
import { admitPatient } from "../../src/usecases/record/admit-patient.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { openHospital } from "../databases/hospital.ts";

const hourMs = 3_600_000;

onEachDatabase("a report over all days", (fresh) => {
  it("begins with the day that ended when the only patient came, at a census of 24:00", async () => {
    const database = await fresh();
    const admittedAt = Date.UTC(2024, 2, 5);
    const now = admittedAt + 30 * hourMs;
    const { store, at, addWard } = await openHospital(database.url, { zone: "UTC", census: "24:00", now });
    const wardId = await addWard("A");
    await admitPatient(at(now), { patient: { identifier: "A-1" }, number: "S-1", admittedAt, wardId });
    const { wards } = await loadMonth(at(now), { days: null });
    const arrival = admittedAt / (24 * hourMs);
    expect(wards.flatMap((ward) => ward.days.map(({ day }) => day))).toEqual([arrival - 1, arrival]);
    await store.close();
    await database.drop();
  });
});
