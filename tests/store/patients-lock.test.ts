import { expect, it } from "vitest";
import { lockPatient, lockPatients } from "../../src/store/patients.ts";
import { type AlderBay, alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { gate } from "../databases/gate.ts";
import { sharedStore } from "../databases/shared-store.ts";

const pause = () => new Promise((resolve) => setTimeout(resolve, 60));

onEachDatabase("the lock of a patient", (fresh, kind) => {
  const shared = sharedStore(fresh);

  const rowOf = (id: number) => shared.store.read((read) => read.db.patient.findUniqueOrThrow({ where: { id } }));
  const lock = (bay: AlderBay, key: Parameters<typeof lockPatient>[2]) =>
    shared.store.tx((tx) => lockPatient(tx, bay.facilityId, key));

  it("lets one write at a time: the second waits for the first and then sees what it stored", async () => {
    const bay = await alderBay(shared.store);
    const { patientId } = await bay.admit("P1", "2024-03-01 10:00");
    const [locked, go] = [gate(), gate()];
    const log: string[] = [];
    const first = shared.store.tx(async (tx) => {
      await lockPatient(tx, bay.facilityId, { patientId });
      locked.open();
      await go.opened;
      await tx.db.patient.update({ where: { id: patientId }, data: { birthDay: 7 } });
      log.push("first");
    });
    await locked.opened;
    const second = shared.store.tx(async (tx) => {
      await lockPatient(tx, bay.facilityId, { patientId });
      log.push("second");
      return (await tx.db.patient.findUniqueOrThrow({ where: { id: patientId } })).birthDay;
    });
    await pause();
    expect(log).toEqual([]);
    go.open();
    await first;
    expect(await second).toBe(7);
    expect(log).toEqual(["first", "second"]);
  });

  it("loses no change when twelve read and write the patient at once", async () => {
    const bay = await alderBay(shared.store);
    const { patientId } = await bay.admit("P1", "2024-03-01 10:00");
    const addOne = () =>
      shared.store.tx(async (tx) => {
        await lockPatient(tx, bay.facilityId, { patientId });
        const { birthDay } = await tx.db.patient.findUniqueOrThrow({ where: { id: patientId } });
        await tx.db.patient.update({ where: { id: patientId }, data: { birthDay: (birthDay ?? 0) + 1 } });
      });
    await Promise.all(Array.from({ length: 12 }, addOne));
    expect((await rowOf(patientId)).birthDay).toBe(12);
  });

  it("waited for while the patient is merged is that of the survivor", async () => {
    const bay = await alderBay(shared.store);
    const one = await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00");
    const two = await bay.admit("P2", "2024-03-03 10:00");
    const [locked, go] = [gate(), gate()];
    const holding = shared.store.tx(async (tx) => {
      await lockPatients(tx, bay.facilityId, [one.patientId, two.patientId]);
      locked.open();
      await go.opened;
      await tx.db.patient.update({ where: { id: one.patientId }, data: { survivorId: two.patientId } });
    });
    await locked.opened;
    const waiting = lock(bay, { stayId: one.stayId });
    await pause();
    go.open();
    await holding;
    expect((await waiting).id).toBe(two.patientId);
  });

  it("can be taken with others in any order without a deadlock", async () => {
    const bay = await alderBay(shared.store);
    const ids: number[] = [];
    for (const name of ["P1", "P2", "P3", "P4"]) ids.push((await bay.admit(name, "2024-03-01 10:00")).patientId);
    let runs = 0;
    const take = (order: readonly number[]) =>
      shared.store.tx(async (tx) => {
        runs++;
        await lockPatients(tx, bay.facilityId, [...order, ...order]);
      });
    const before = await rowOf(ids[0] ?? 0);
    await Promise.all(Array.from({ length: 10 }, (_, i) => take(i % 2 === 0 ? ids : ids.toReversed())));
    expect(runs).toBe(10);
    expect((await rowOf(ids[0] ?? 0)).version).toBe(before.version + 10);
  });

  it("keeps the counting rules of the facility still while the patient is written", async () => {
    const bay = await alderBay(shared.store);
    const { patientId } = await bay.admit("P1", "2024-03-01 10:00");
    const [locked, go] = [gate(), gate()];
    const log: string[] = [];
    const writing = shared.store.tx(async (tx) => {
      await lockPatient(tx, bay.facilityId, { patientId });
      locked.open();
      await go.opened;
      log.push("patient");
    });
    await locked.opened;
    const changing = bay.addWard("C", "procedure").then(() => log.push("ward"));
    await pause();
    go.open();
    await Promise.all([writing, changing]);
    expect(log).toEqual(["patient", "ward"]);
  });

  it(`is ${kind === "sqlite" ? "that of the one writer: another patient is written next" : "their row: another patient is written meanwhile"}`, async () => {
    const bay = await alderBay(shared.store);
    const one = await bay.admit("P1", "2024-03-01 10:00");
    const two = await bay.admit("P2", "2024-03-01 10:00");
    const [locked, written] = [gate(), gate()];
    const log: string[] = [];
    const first = shared.store.tx(async (tx) => {
      await lockPatient(tx, bay.facilityId, one);
      locked.open();
      await (kind === "sqlite" ? pause() : written.opened);
      log.push("first");
    });
    await locked.opened;
    await shared.store.tx(async (tx) => {
      await lockPatient(tx, bay.facilityId, two);
      log.push("second");
    });
    written.open();
    await first;
    expect(log).toEqual(kind === "sqlite" ? ["first", "second"] : ["second", "first"]);
  });

  /** Which of these rows nobody holds. */
  const freeOf = (ids: readonly number[]) =>
    shared.store.tx(async (tx) => {
      const sql = `SELECT id FROM patient WHERE id IN (${ids.join()}) ORDER BY id FOR UPDATE SKIP LOCKED`;
      return (await tx.db.$queryRawUnsafe<{ id: number }[]>(sql)).map((row) => row.id);
    });

  if (kind === "postgresql")
    it("is taken in the order of ids, wherever the rows lie and however they are named", async () => {
      const bay = await alderBay(shared.store);
      const ids: number[] = [];
      for (const name of ["P1", "P2", "P3", "P4"]) ids.push((await bay.admit(name, "2024-03-01 10:00")).patientId);
      const [first = 0, second = 0, third = 0, fourth = 0] = ids;
      // A row that is written moves to the end of its table.
      await lock(bay, { patientId: first });
      const [locked, go] = [gate(), gate()];
      const holding = shared.store.tx(async (tx) => {
        await lockPatient(tx, bay.facilityId, { patientId: third });
        locked.open();
        await go.opened;
      });
      await locked.opened;
      const waiting = shared.store.tx((tx) => lockPatients(tx, bay.facilityId, [fourth, third, second, first]));
      await expect.poll(() => freeOf(ids), { timeout: 10_000 }).toEqual([fourth]);
      go.open();
      await Promise.all([holding, waiting]);
    });
});
