import { expect, it } from "vitest";
import { rebuildLedger, verifyLedger } from "../../../src/usecases/jobs/check-ledger.ts";
import { mergePatients } from "../../../src/usecases/record/merge-patients.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf, ledgerOf } from "../../databases/read-back.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { inserted } from "../../databases/urethral.ts";
import { utc } from "../../databases/utc.ts";
import { dayOf } from "../../reference/day-text.ts";

const later = "2024-03-10 10:00";

onEachDatabase("checking the ledger", (fresh) => {
  const shared = sharedStore(fresh);

  /** Three patients, one of them merged, one still there; seven rows in the ledger. */
  async function patients(bay: AlderBay): Promise<{ one: number; stayId: number }> {
    const one = await bay.stay("P1", "2024-03-01 10:00", "2024-03-06 10:00");
    await inserted(bay, "2024-03-06 11:00", one.stayId, "2024-03-03 11:00");
    const two = await bay.stay("P2", "2024-03-07 10:00", "2024-03-09 10:00");
    await mergePatients(bay.at("2024-03-09 11:00"), { fromId: two.patientId, intoId: one.patientId });
    await bay.admit("P3", "2024-03-01 10:00");
    return { one: one.patientId, stayId: one.stayId };
  }

  /** Makes four rows of P1 wrong: another ward, another catheter, one missing, one too many. */
  async function spoil(bay: AlderBay, { one: patientId, stayId }: { one: number; stayId: number }): Promise<void> {
    const at = (day: string) => ({ where: { patientId_day: { patientId, day: dayOf(day) } } });
    const extra = { patientId, day: dayOf("2024-02-01"), wardId: bay.a, stayId, catheter: false };
    await shared.store.tx(async (tx) => {
      await tx.db.patientDay.update({ ...at("2024-03-02"), data: { wardId: bay.b } });
      await tx.db.patientDay.update({ ...at("2024-03-03"), data: { catheter: true } });
      await tx.db.patientDay.delete(at("2024-03-04"));
      await tx.db.patientDay.create({ data: extra });
    });
  }

  it("finds nothing in one that is right, and says how much it looked at", async () => {
    const bay = await alderBay(shared.store);
    await patients(bay);
    expect(await verifyLedger(bay.at(later))).toEqual({ patients: 3, rows: 7, differences: [] });
    expect(await verifyLedger((await alderBay(shared.store)).at(later))).toEqual({
      patients: 0,
      rows: 0,
      differences: [],
    });
  });

  it("finds every row that is wrong, missing or too many, and changes nothing", async () => {
    const bay = await alderBay(shared.store);
    const { one, stayId } = await patients(bay);
    await spoil(bay, { one, stayId });
    const before = await ledgerOf(shared.store, one);
    const heard: number[] = [];
    const { differences } = await verifyLedger(bay.at(later), (difference) => heard.push(difference.day));
    const row = { wardId: bay.a, stayId, catheter: false };
    const at = (day: string, ledger: object | null, recount: object | null) => ({
      patientId: one,
      day: dayOf(day),
      ledger,
      recount,
    });
    expect(differences.toSorted((a, b) => a.day - b.day)).toEqual([
      at("2024-02-01", row, null),
      at("2024-03-02", { ...row, wardId: bay.b }, row),
      at("2024-03-03", { ...row, catheter: true }, row),
      at("2024-03-04", null, { ...row, catheter: true }),
    ]);
    expect(heard).toHaveLength(4);
    expect(await ledgerOf(shared.store, one)).toEqual(before);
  });

  it("mends it when asked, tells what differed and leaves one audit entry; then nothing is left to mend", async () => {
    const bay = await alderBay(shared.store);
    const found = await patients(bay);
    const right = await ledgerOf(shared.store, found.one);
    await spoil(bay, found);
    const act = bay.at("2024-03-10 11:00");
    expect((await rebuildLedger(act)).differences).toHaveLength(4);
    expect(await ledgerOf(shared.store, found.one)).toEqual(right);
    expect((await rebuildLedger(act)).differences).toEqual([]);
    expect(await auditOf(shared.store, bay.facilityId, utc("2024-03-10 11:00"))).toEqual([
      {
        at: act.now,
        personId: bay.personId,
        action: "rebuild-ledger",
        patientIds: [found.one],
        details: { rows: 4 },
      },
    ]);
  });

  it("looks at its own facility alone", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    await spoil(bay, await patients(bay));
    expect((await verifyLedger(other.at(later))).differences).toEqual([]);
    expect((await rebuildLedger(other.at(later))).differences).toEqual([]);
    expect((await verifyLedger(bay.at(later))).differences).toHaveLength(4);
  });
});
