import { expect, it } from "vitest";
import { removeCatheter } from "../../../src/usecases/record/remove-catheter.ts";
import { voidCatheter } from "../../../src/usecases/record/void-entry.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf, ledgerOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { inserted } from "../../databases/urethral.ts";
import { utc } from "../../databases/utc.ts";

const later = "2024-03-06 10:00";

onEachDatabase("removing a catheter", (fresh) => {
  const shared = sharedStore(fresh);

  async function withCatheter() {
    const bay = await alderBay(shared.store);
    const admitted = await bay.stay("P1", "2024-03-01 10:00", "2024-03-05 10:00");
    const catheterId = await inserted(bay, "2024-03-05 11:00", admitted.stayId, "2024-03-01 11:00");
    return { bay, catheterId, ...admitted };
  }

  it("ends its catheter-days: at the census it must still be in", async () => {
    const { bay, catheterId, patientId } = await withCatheter();
    const act = bay.at(later);
    await removeCatheter(act, { catheterId, at: utc("2024-03-04 00:00") });
    expect(await ledgerOf(shared.store, patientId)).toEqual([
      "2024-03-02 A with catheter",
      "2024-03-03 A with catheter",
      "2024-03-04 A",
      "2024-03-05 A",
    ]);
    expect(await auditOf(shared.store, bay.facilityId, act.now)).toEqual([
      {
        at: act.now,
        personId: bay.personId,
        action: "remove-catheter",
        patientIds: [patientId],
        details: { catheterId, version: 2 },
      },
    ]);
  });

  it("found out between two times counts up to the first of them", async () => {
    const { bay, catheterId, patientId } = await withCatheter();
    const [after, before] = [utc("2024-03-02 20:00"), utc("2024-03-04 20:00")];
    await removeCatheter(bay.at(later), { catheterId, after, before });
    expect(await ledgerOf(shared.store, patientId)).toEqual([
      "2024-03-02 A with catheter",
      "2024-03-03 A",
      "2024-03-04 A",
      "2024-03-05 A",
    ]);
  });

  it("is refused before the insertion, in the wrong order, in the future, voided, twice, and from elsewhere", async () => {
    const { bay, catheterId, stayId } = await withCatheter();
    const other = await alderBay(shared.store);
    const act = bay.at(later);
    const at = (time: string, by = act, id = catheterId) =>
      refusalOf(shared.store, () => removeCatheter(by, { catheterId: id, at: utc(time) }));
    expect(await at("2024-03-01 10:59")).toMatchObject({ code: "removal-before-insertion", pointer: "/removedAt" });
    expect(await at("2024-03-06 10:06")).toMatchObject({ code: "in-the-future", pointer: "/at" });
    expect(await at("2024-03-02 10:00", other.at(later))).toMatchObject({ code: "not-found" });
    const reversed = { catheterId, after: utc("2024-03-03 10:00"), before: utc("2024-03-02 10:00") };
    expect(await refusalOf(shared.store, () => removeCatheter(act, reversed))).toMatchObject({
      code: "end-before-start",
      pointer: "/removedBeforeAt",
    });
    const voided = await inserted(bay, later, stayId, "2024-03-01 12:00");
    await voidCatheter(act, { catheterId: voided, reason: "wrong patient" });
    const entryVoided = { code: "entry-voided", other: `catheter ${voided}` };
    expect(await at("2024-03-02 10:00", act, voided)).toMatchObject(entryVoided);
    await removeCatheter(act, { catheterId, at: utc("2024-03-02 10:00") });
    const twice = { code: "already-removed", other: `catheter ${catheterId}` };
    expect(await at("2024-03-02 10:00")).toMatchObject(twice);
  });
});
