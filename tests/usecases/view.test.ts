import { afterAll, beforeAll, expect, it } from "vitest";
import type { Act } from "../../src/usecases/act.ts";
import { view } from "../../src/usecases/view.ts";
import { onEachDatabase, type TestDatabase } from "../databases/databases.ts";
import { gate } from "../databases/gate.ts";
import { type Hospital, openHospital } from "../databases/hospital.ts";

onEachDatabase("a view of patients", (fresh) => {
  let database: TestDatabase;
  let hospital: Hospital;
  let act: Act;

  beforeAll(async () => {
    database = await fresh();
    hospital = await openHospital(database.url, { now: Date.UTC(2026, 9, 1) });
    act = hospital.at(Date.UTC(2026, 10, 20));
  });
  afterAll(async () => {
    await hospital.store.close();
    await database.drop();
  });

  const seenWards = () =>
    act.store.read(async ({ db }) => {
      const rows = await db.auditEntry.findMany({ where: { action: "view-round" }, select: { details: true } });
      return rows.map(({ details }) => (JSON.parse(details) as { wardId: number }).wardId).toSorted((a, b) => a - b);
    });

  const look = (wardId: number, by: Act = act) =>
    view(by, async (_read, seen) => {
      seen({ action: "view-round", details: { wardId } });
      return wardId;
    });

  it("is answered once its entry is stored, also where many come together", async () => {
    const wards = Array.from({ length: 40 }, (_, i) => i + 1);
    await Promise.all(
      wards.map(async (wardId) => {
        expect(await look(wardId)).toBe(wardId);
        expect(await seenWards()).toContain(wardId);
      }),
    );
    expect(await seenWards()).toEqual(wards);
  });

  it("is not answered when its entry cannot be stored", async () => {
    const store = { ...act.store, noteView: () => Promise.reject(new Error("the disk is full")) };
    await expect(look(99, { ...act, store })).rejects.toThrow("the disk is full");
    expect(await seenWards()).not.toContain(99);
  });

  it("is a fault of the program without an entry", async () => {
    await expect(view(act, async () => "seen by nobody")).rejects.toThrow("no entry for the audit trail");
  });

  it("keeps nobody from writing, however long it looks", async () => {
    const hold = gate();
    const looking = view(act, async (_read, seen) => {
      seen({ action: "view-round", details: { wardId: 7 } });
      await hold.opened;
    });
    await hospital.addWard("7W");
    hold.open();
    await looking;
  });
});
