import { expect, it } from "vitest";
import { type NumberRows, noNumber, readNumbers } from "../../src/store/read-numbers.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

const stays: NumberRows = {
  cells: [{ int: "s.id" }, { instant: "s.admitted_at" }, { instant: "s.discharged_at" }],
  joins: [{ table: "stay s", on: "s.patient_id = given.value" }],
};

onEachDatabase("rows of numbers", (fresh) => {
  const shared = sharedStore(fresh);
  const read = (...ids: number[]) => shared.store.read((r) => readNumbers(r, stays, ids));

  it("come one number after the other, instants in milliseconds, and a mark where there is none", async () => {
    const bay = await alderBay(shared.store);
    const times = ["2024-03-01 10:00:00.001", "2024-03-02 23:59:59.999"] as const;
    const gone = await bay.stay("P1", ...times);
    expect(await read(gone.patientId)).toEqual([gone.stayId, ...times.map(utc)]);
    const here = await bay.admit("P2", "1969-12-31 23:59:59.999");
    expect(await read(here.patientId)).toEqual([here.stayId, -1, noNumber]);
    expect(await read(here.patientId, gone.patientId)).toHaveLength(6);
  });

  it("are none of nobody", async () => {
    expect(await read()).toEqual([]);
    expect(await read(-1)).toEqual([]);
  });
});
