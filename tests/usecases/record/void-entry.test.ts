import { expect, it } from "vitest";
import { movePatient } from "../../../src/usecases/record/move-patient.ts";
import { recordAbsence } from "../../../src/usecases/record/record-absence.ts";
import { voidCatheter, voidStay, voidWardStay } from "../../../src/usecases/record/void-entry.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf, ledgerOf, versionsOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { inserted } from "../../databases/urethral.ts";
import { utc } from "../../databases/utc.ts";

const reason = "wrong patient";
const later = "2024-03-06 10:00";

onEachDatabase("voiding", (fresh) => {
  const shared = sharedStore(fresh);
  const whole = (bay: AlderBay) => bay.stay("P1", "2024-03-01 10:00", "2024-03-04 10:00", { number: "N1" });

  it("a stay takes all its days out of the ledger, deletes nothing, and frees its number and time", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId, wardStayId } = await whole(bay);
    const catheterId = await inserted(bay, "2024-03-04 11:00", stayId, "2024-03-01 11:00");
    expect(await ledgerOf(shared.store, patientId)).toHaveLength(3);
    const act = bay.at(later);
    await voidStay(act, { stayId, reason });
    expect(await ledgerOf(shared.store, patientId)).toEqual([]);
    const rows = await shared.store.read(async (read) => [
      await read.db.stay.findUniqueOrThrow({ where: { id: stayId } }),
      await read.db.wardStay.findUniqueOrThrow({ where: { id: wardStayId } }),
      await read.db.catheter.findUniqueOrThrow({ where: { id: catheterId } }),
    ]);
    expect(rows.map((row) => row.voidReason)).toEqual([reason, reason, reason]);
    expect(rows.map((row) => row.voidKey)).toEqual([stayId, wardStayId, catheterId]);
    const kept = await versionsOf(shared.store, "stay", stayId);
    expect(kept.at(-1)).toMatchObject({ version: 2, reason, replacedAt: act.now, body: { voidReason: null } });
    expect(await auditOf(shared.store, bay.facilityId, act.now)).toEqual([
      {
        at: act.now,
        personId: bay.personId,
        action: "void-stay",
        patientIds: [patientId],
        details: { stayId, version: 3, reason },
      },
    ]);
    await whole(bay);
    expect(await ledgerOf(shared.store, patientId)).toHaveLength(3);
  });

  it("a ward stay leaves its time off the wards, uncounted", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await whole(bay);
    const moved = { stayId, movedAt: utc("2024-03-02 12:00"), wardId: bay.b };
    const { wardStayId } = await movePatient(bay.at(later), moved);
    const act = bay.at("2024-03-06 11:00");
    await voidWardStay(act, { wardStayId, reason });
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-02 A"]);
    expect(await versionsOf(shared.store, "ward-stay", wardStayId)).toMatchObject([{ version: 1, reason }]);
    expect(await auditOf(shared.store, bay.facilityId, act.now)).toMatchObject([
      { action: "void-ward-stay", patientIds: [patientId], details: { wardStayId, reason } },
    ]);
  });

  it("a ward stay after a procedure leaves nobody knowing what the longer time away was: no bed was held", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId, wardStayId } = await whole(bay);
    const away = { leftAt: utc("2024-03-01 20:00"), backAt: utc("2024-03-02 12:00"), kind: "procedure" } as const;
    await recordAbsence(bay.at(later), { stayId, ...away });
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-02 A", "2024-03-03 A", "2024-03-04 A"]);
    const back = await shared.store.read((read) =>
      read.db.wardStay.findFirstOrThrow({ where: { stayId, startAt: new Date(away.backAt) } }),
    );
    const act = bay.at("2024-03-06 11:00");
    await voidWardStay(act, { wardStayId: back.id, reason });
    expect(await ledgerOf(shared.store, patientId)).toEqual([]);
    const kept = await versionsOf(shared.store, "ward-stay", wardStayId);
    expect(kept.at(-1)).toMatchObject({ reason, replacedAt: act.now, body: { absenceAfter: "procedure" } });
  });

  it("a catheter takes its catheter-days back and leaves the patient-days", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await whole(bay);
    const catheterId = await inserted(bay, later, stayId, "2024-03-01 11:00");
    const act = bay.at("2024-03-06 11:00");
    await voidCatheter(act, { catheterId, reason });
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-02 A", "2024-03-03 A", "2024-03-04 A"]);
    expect(await versionsOf(shared.store, "catheter", catheterId)).toMatchObject([{ version: 1, reason }]);
    expect(await auditOf(shared.store, bay.facilityId, act.now)).toMatchObject([
      { action: "void-catheter", patientIds: [patientId], details: { catheterId, reason } },
    ]);
  });

  it("is refused for the only ward stay, twice, and from elsewhere", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const { stayId, wardStayId } = await whole(bay);
    const catheterId = await inserted(bay, later, stayId, "2024-03-01 11:00");
    const [act, elsewhere] = [bay.at(later), other.at(later)];
    const works = [
      (by: typeof act) => voidWardStay(by, { wardStayId, reason }),
      (by: typeof act) => voidCatheter(by, { catheterId, reason }),
      (by: typeof act) => voidStay(by, { stayId, reason }),
    ];
    for (const work of works)
      expect(await refusalOf(shared.store, () => work(elsewhere))).toMatchObject({ code: "not-found" });
    expect(await refusalOf(shared.store, () => voidWardStay(act, { wardStayId, reason }))).toMatchObject({
      code: "first-ward-stay",
      other: `ward stay ${wardStayId}`,
    });
    await voidStay(act, { stayId, reason });
    const others = [`ward stay ${wardStayId}`, `catheter ${catheterId}`, `stay ${stayId}`];
    for (const [i, work] of works.entries())
      expect(await refusalOf(shared.store, () => work(act))).toMatchObject({ code: "entry-voided", other: others[i] });
  });
});
