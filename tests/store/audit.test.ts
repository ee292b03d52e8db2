import { expect, it } from "vitest";
import { writeAudit } from "../../src/store/audit.ts";
import { recordDailyCount } from "../../src/usecases/months/record-daily-count.ts";
import { dischargePatient } from "../../src/usecases/record/discharge-patient.ts";
import { mergePatients } from "../../src/usecases/record/merge-patients.ts";
import { addWard } from "../../src/usecases/wards/add-ward.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { auditOf, everything } from "../databases/read-back.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

onEachDatabase("the audit trail", (fresh, kind) => {
  const shared = sharedStore(fresh);

  it("says who did what, when, to whom, each patient once", async () => {
    const bay = await alderBay(shared.store);
    const one = await bay.admit("P1", "2024-03-01 10:00");
    const two = await bay.admit("P2", "2024-03-01 10:00");
    await shared.store.tx((tx) =>
      writeAudit(tx, bay.by("2024-03-02 08:00:00.123"), {
        action: "view-round",
        patientIds: [two.patientId, one.patientId, two.patientId],
        details: { ward: bay.a },
      }),
    );
    expect(await auditOf(shared.store, bay.facilityId, utc("2024-03-02 00:00"))).toEqual([
      {
        at: utc("2024-03-02 08:00:00.123"),
        personId: bay.personId,
        action: "view-round",
        patientIds: [one.patientId, two.patientId],
        details: { ward: bay.a },
      },
    ]);
  });

  it("may concern nobody", async () => {
    const bay = await alderBay(shared.store);
    await shared.store.tx((tx) => writeAudit(tx, bay.by("2024-03-02 08:00"), { action: "view-round", details: {} }));
    const [entry] = await auditOf(shared.store, bay.facilityId, utc("2024-03-02 00:00"));
    expect(entry?.patientIds).toEqual([]);
  });

  /** From now on the database itself refuses every audit entry. */
  async function breakAudit(): Promise<void> {
    const on = '"audit_entry"';
    const statements =
      kind === "sqlite"
        ? [`CREATE TRIGGER broken BEFORE INSERT ON ${on} BEGIN SELECT RAISE(ABORT, 'no audit today'); END`]
        : [
            "CREATE FUNCTION broken() RETURNS trigger LANGUAGE plpgsql AS 'BEGIN RAISE ''no audit today''; END'",
            `CREATE TRIGGER broken BEFORE INSERT ON ${on} FOR EACH ROW EXECUTE FUNCTION broken()`,
          ];
    for (const sql of statements) await shared.store.tx((tx) => tx.db.$executeRawUnsafe(sql));
  }

  it("is written with the act or neither is: an act whose entry fails is not stored", async () => {
    const bay = await alderBay(shared.store);
    const one = await bay.admit("P1", "2024-03-03 10:00");
    const two = await bay.stay("P2", "2024-03-01 10:00", "2024-03-02 10:00");
    await breakAudit();
    const before = await everything(shared.store);
    const act = bay.at("2024-03-05 10:00");
    const ward = { code: "C", name: "C", type: null, setting: "inpatient", beds: null, openedDay: null } as const;
    const acts = [
      () => bay.admit("P3", "2024-03-05 10:00"),
      () => dischargePatient(act, { stayId: one.stayId, dischargedAt: utc("2024-03-05 09:00") }),
      () => mergePatients(act, { fromId: two.patientId, intoId: one.patientId }),
      () => recordDailyCount(act, { wardId: bay.a, day: 19_000, patients: 3, catheters: 1 }),
      () => addWard(act, ward),
    ];
    for (const [i, work] of acts.entries()) await expect(work(), `act ${i}`).rejects.toThrow("no audit today");
    expect(await everything(shared.store)).toEqual(before);
  });
});
