import { expect, it } from "vitest";
import { postToLedger } from "../../src/store/ledger.ts";
import { ledgerByDay, ledgerByWard, ledgerPatients, ledgerSpan } from "../../src/store/ward-days.ts";
import { type AlderBay, alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { dayOf } from "../reference/day-text.ts";

const [d1, d2, d3] = [dayOf("2024-02-29"), dayOf("2024-03-01"), dayOf("2024-03-02")];

onEachDatabase("sums over the ledger", (fresh) => {
  const shared = sharedStore(fresh);

  /** Three patients: A holds 2, 1 and 1 of them on the three days, with 1, 0 and 1 catheters; B holds 0, 2 and 0, with 1. */
  async function threePatients(): Promise<AlderBay & { ids: number[]; stays: number[] }> {
    const bay = await alderBay(shared.store);
    const admitted = [];
    for (const name of ["P3", "P1", "P2"]) admitted.push(await bay.admit(name, "2024-02-28 10:00"));
    const [ids, stays] = [admitted.map((p) => p.patientId), admitted.map((p) => p.stayId)];
    const on = (who: number, day: number, wardId: number, catheter: boolean) => ({
      patientId: ids[who] ?? 0,
      row: { day, wardId, stayId: stays[who] ?? 0, catheter },
    });
    const all = [
      ...[on(0, d1, bay.a, true), on(0, d2, bay.b, true), on(0, d3, bay.a, true)],
      ...[on(1, d1, bay.a, false), on(1, d2, bay.a, false), on(2, d2, bay.b, false)],
    ];
    await shared.store.tx((tx) =>
      postToLedger(
        tx,
        ids.map((patientId) => ({
          patientId,
          fromDay: d1,
          rows: all.filter((one) => one.patientId === patientId).map((one) => one.row),
        })),
      ),
    );
    return { ...bay, ids, stays };
  }

  it("count patient-days and catheter-days by ward", async () => {
    const bay = await threePatients();
    const sums = await shared.store.read((read) => ledgerByWard(read, [bay.b, bay.a], { first: d1, last: d3 }));
    expect(sums).toEqual([
      { wardId: bay.a, patientDays: 4, catheterDays: 2 },
      { wardId: bay.b, patientDays: 2, catheterDays: 1 },
    ]);
  });

  it("count by ward and day, in order, without empty days", async () => {
    const bay = await threePatients();
    const sums = await shared.store.read((read) => ledgerByDay(read, [bay.a, bay.b], { first: d1, last: d3 }));
    expect(sums).toEqual([
      { wardId: bay.a, day: d1, patientDays: 2, catheterDays: 1 },
      { wardId: bay.a, day: d2, patientDays: 1, catheterDays: 0 },
      { wardId: bay.a, day: d3, patientDays: 1, catheterDays: 1 },
      { wardId: bay.b, day: d2, patientDays: 2, catheterDays: 1 },
    ]);
  });

  it("take the first and the last day with them and none beyond, and only the wards that are asked for", async () => {
    const bay = await threePatients();
    const sum = (wardIds: number[], first: number, last: number) =>
      shared.store.read((read) => ledgerByWard(read, wardIds, { first, last }));
    expect(await sum([bay.a], d2, d2)).toEqual([{ wardId: bay.a, patientDays: 1, catheterDays: 0 }]);
    expect(await sum([bay.b], d1, d1)).toEqual([]);
    expect(await sum([], d1, d3)).toEqual([]);
    expect(await sum([bay.a], d3, d1)).toEqual([]);
  });

  it("open to the patients behind a ward day", async () => {
    const bay = await threePatients();
    const patients = await shared.store.read((read) => ledgerPatients(read, bay.a, d1));
    expect(patients.toSorted((a, b) => (a.identifier < b.identifier ? -1 : 1))).toEqual([
      { patientId: bay.ids[1], stayId: bay.stays[1], identifier: "P1", catheter: false },
      { patientId: bay.ids[0], stayId: bay.stays[0], identifier: "P3", catheter: true },
    ]);
    expect(await shared.store.read((read) => ledgerPatients(read, bay.b, d1))).toEqual([]);
  });

  it("reach from the first to the last day that has anything", async () => {
    const bay = await threePatients();
    const span = (wardIds: number[]) => shared.store.read((read) => ledgerSpan(read, wardIds));
    expect(await span([bay.a, bay.b])).toEqual({ first: d1, last: d3 });
    expect(await span([bay.b])).toEqual({ first: d2, last: d2 });
    expect(await span([])).toBeNull();
  });
});
