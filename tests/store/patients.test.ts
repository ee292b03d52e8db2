import { expect, it } from "vitest";
import {
  completePatient,
  ensurePatient,
  ensurePatients,
  findPatient,
  lockPatient,
  patientsByIdentifier,
  survivorsOf,
} from "../../src/store/patients.ts";
import { insertCatheter } from "../../src/usecases/record/insert-catheter.ts";
import { mergePatients, unmergePatients } from "../../src/usecases/record/merge-patients.ts";
import { type AlderBay, alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { faultsOf } from "../databases/refusal.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

const later = "2024-04-01 00:00";

onEachDatabase("a patient", (fresh) => {
  const shared = sharedStore(fresh);

  const rowOf = (id: number) => shared.store.read((read) => read.db.patient.findUniqueOrThrow({ where: { id } }));
  const lock = (bay: AlderBay, key: Parameters<typeof lockPatient>[2]) =>
    shared.store.tx((tx) => lockPatient(tx, bay.facilityId, key));

  it("is taken by its own id or by any entry, which counts its version up", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId, wardStayId } = await bay.admit("P1", "2024-03-01 10:00");
    const inserted = { stayId, kind: "indwelling-urethral", insertedAt: utc("2024-03-01 11:00") } as const;
    const { catheterId } = await insertCatheter(bay.at(later), { ...inserted, inPlaceOnArrival: false });
    const { version } = await rowOf(patientId);
    for (const [i, key] of [{ patientId }, { stayId }, { wardStayId }, { catheterId }].entries())
      expect(await lock(bay, key)).toMatchObject({ id: patientId, version: version + i + 1 });
  });

  it("of another facility is not there, by whatever key", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const { patientId, stayId, wardStayId } = await bay.admit("P1", "2024-03-01 10:00");
    for (const key of [{ patientId }, { stayId }, { wardStayId }, { catheterId: patientId }, { patientId: 0 }]) {
      const [fault] = await faultsOf(() => lock(other, key));
      expect(fault?.code).toBe("not-found");
    }
    const [fault] = await faultsOf(() => shared.store.read((read) => findPatient(read, other.facilityId, { stayId })));
    expect(fault?.code).toBe("not-found");
  });

  it("at the end of a chain of merges is the survivor of all of them", async () => {
    const bay = await alderBay(shared.store);
    const one = await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00");
    const two = await bay.stay("P2", "2024-03-03 10:00", "2024-03-04 10:00");
    const three = await bay.stay("P3", "2024-03-05 10:00", "2024-03-06 10:00");
    await mergePatients(bay.at(later), { fromId: one.patientId, intoId: two.patientId });
    await mergePatients(bay.at(later), { fromId: two.patientId, intoId: three.patientId });
    for (const stayId of [one.stayId, two.stayId, three.stayId])
      expect((await lock(bay, { stayId })).id).toBe(three.patientId);
    const rows = await shared.store.read((read) => patientsByIdentifier(read, bay.facilityId, ["P1", "P3", "P9"]));
    expect([...rows.keys()].sort()).toEqual(["P1", "P3"]);
    expect(rows.get("P1")).toMatchObject({ survivorId: three.patientId, mergedIntoId: two.patientId });
  });

  it("that was merged is known by the identifier of the survivor, in its own facility alone", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const one = await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00");
    const two = await bay.stay("P2", "2024-03-03 10:00", "2024-03-04 10:00");
    const three = await bay.stay("P3", "2024-03-05 10:00", "2024-03-06 10:00");
    for (const identifier of ["P1", "P2"]) await other.admit(identifier, "2024-03-01 10:00");
    const survivors = (facilityId = bay.facilityId) =>
      shared.store.read((read) => survivorsOf(read, facilityId, ["P1", "P2", "P3", "P9"]));
    expect(await survivors()).toEqual(new Map());
    const { mergeId } = await mergePatients(bay.at(later), { fromId: one.patientId, intoId: two.patientId });
    await mergePatients(bay.at(later), { fromId: two.patientId, intoId: three.patientId });
    expect([...(await survivors())].sort()).toEqual([
      ["P1", "P3"],
      ["P2", "P3"],
    ]);
    expect(await survivors(other.facilityId)).toEqual(new Map());
    await unmergePatients(bay.at(later), { mergeId, reason: "two persons" });
    expect([...(await survivors())]).toEqual([["P2", "P3"]]);
  });

  it("is made once for each identifier, also by two at once, and never in place of a known one", async () => {
    const bay = await alderBay(shared.store);
    const known = await bay.admit("P1", "2024-03-01 10:00");
    const ensure = (identifier: string) =>
      shared.store.tx((tx) => ensurePatient(tx, bay.by(later), { id: tx.newId(), identifier, birthDay: 1, sex: null }));
    expect(await ensure("P1")).toBe(known.patientId);
    expect((await rowOf(known.patientId)).birthDay).toBeNull();
    const [one, two] = await Promise.all([ensure("P2"), ensure("P2")]);
    expect(one).toBe(two);
    const { recordedAt, ...row } = await rowOf(one ?? 0);
    expect(recordedAt.getTime()).toBe(utc(later));
    const own = { identifier: "P2", survivorId: one, mergedIntoId: null, birthDay: 1, recordedBy: bay.personId };
    expect(row).toMatchObject(own);
    await shared.store.tx((tx) => ensurePatients(tx, bay.by(later), []));
  });

  it("is filled in where nothing was known, and not changed where something was", async () => {
    const bay = await alderBay(shared.store);
    const { patientId } = await bay.admit("P1", "2024-03-01 10:00");
    const fill = (birthDay: number | null, sex: string | null) =>
      shared.store.tx((tx) => completePatient(tx, patientId, { birthDay, sex }));
    await fill(null, "f");
    await fill(100, "m");
    await fill(200, null);
    expect(await rowOf(patientId)).toMatchObject({ birthDay: 100, sex: "f" });
  });
});
