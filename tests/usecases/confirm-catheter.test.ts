import { expect, it } from "vitest";
import { confirmCatheter } from "../../src/usecases/confirm-catheter.ts";
import { removeCatheter } from "../../src/usecases/remove-catheter.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { auditOf, ledgerOf, versionsOf } from "../databases/read-back.ts";
import { refusalOf } from "../databases/refusal.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { inserted } from "../databases/urethral.ts";
import { utc } from "../databases/utc.ts";

onEachDatabase("seeing a catheter in place", (fresh) => {
  const shared = sharedStore(fresh);
  const seenOf = async (id: number) =>
    (await shared.store.read((read) => read.db.catheter.findUniqueOrThrow({ where: { id } }))).lastSeenAt?.getTime();

  it("keeps the latest such time, and changes no day", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-03 10:00");
    const catheterId = await inserted(bay, "2024-03-03 11:00", stayId, "2024-03-01 11:00");
    const before = await ledgerOf(shared.store, patientId);
    const act = bay.at("2024-03-03 12:00");
    await confirmCatheter(act, { catheterId, seenAt: utc("2024-03-02 08:00") });
    expect(await seenOf(catheterId)).toBe(utc("2024-03-02 08:00"));
    await confirmCatheter(bay.at("2024-03-03 13:00"), { catheterId, seenAt: utc("2024-03-01 20:00") });
    expect(await seenOf(catheterId)).toBe(utc("2024-03-02 08:00"));
    expect(await ledgerOf(shared.store, patientId)).toEqual(before);
    expect(await versionsOf(shared.store, "catheter", catheterId)).toHaveLength(1);
    const seen = { action: "confirm-catheter", patientIds: [patientId], details: { catheterId } };
    expect(await auditOf(shared.store, bay.facilityId, act.now)).toMatchObject([seen, seen]);
  });

  it("is refused before the insertion, after the removal, in the future, and from elsewhere", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const { stayId } = await bay.admit("P1", "2024-03-01 10:00");
    const catheterId = await inserted(bay, "2024-03-03 11:00", stayId, "2024-03-01 11:00");
    const act = bay.at("2024-03-04 10:00");
    await removeCatheter(act, { catheterId, at: utc("2024-03-03 10:00") });
    const seen = (time: string, by = act) =>
      refusalOf(shared.store, () => confirmCatheter(by, { catheterId, seenAt: utc(time) }));
    expect(await seen("2024-03-01 10:59")).toEqual({ code: "seen-before-insertion", pointer: "/lastSeenAt" });
    expect(await seen("2024-03-03 10:01")).toEqual({ code: "seen-after-removal", pointer: "/lastSeenAt" });
    expect(await seen("2024-03-04 10:06")).toEqual({ code: "in-the-future", pointer: "/seenAt" });
    expect(await seen("2024-03-02 10:00", other.at("2024-03-04 10:00"))).toMatchObject({ code: "not-found" });
  });
});
