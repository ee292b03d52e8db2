import { expect, it } from "vitest";
import { insertRows } from "../../src/store/bulk.ts";
import { loadTimeline, loadTimelines, openStays, staysBetween } from "../../src/store/timelines.ts";
import { mergePatients } from "../../src/usecases/record/merge-patients.ts";
import { voidStay } from "../../src/usecases/record/void-entry.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

const later = "2024-04-01 00:00";

onEachDatabase("what is recorded about patients", (fresh, kind) => {
  const shared = sharedStore(fresh);

  it("is loaded for many at once, each with their own stays, and empty for who has none", async () => {
    const bay = await alderBay(shared.store);
    const one = await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00");
    const again = await bay.admit("P1", "2024-03-03 10:00");
    const two = await bay.admit("P2", "2024-03-01 10:00");
    const found = await shared.store.read((read) => loadTimelines(read, [one.patientId, two.patientId, -1]));
    expect([...found.keys()]).toEqual([one.patientId, two.patientId, -1]);
    expect(found.get(one.patientId)?.stays.map((stay) => stay.id)).toEqual([one.stayId, again.stayId]);
    expect(found.get(two.patientId)?.stays.map((stay) => stay.wardStays.map((w) => w.id))).toEqual([[two.wardStayId]]);
    expect(found.get(-1)).toEqual({ patientId: -1, stays: [] });
    expect(await shared.store.read((read) => loadTimeline(read, -1))).toEqual({ patientId: -1, stays: [] });
  });

  it("holds the stays of merged patients, each still with the patient it was recorded for", async () => {
    const bay = await alderBay(shared.store);
    const one = await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00");
    const two = await bay.stay("P2", "2024-03-03 10:00", "2024-03-04 10:00");
    await mergePatients(bay.at(later), { fromId: one.patientId, intoId: two.patientId });
    const { stays } = await shared.store.read((read) => loadTimeline(read, two.patientId));
    expect(stays.map((stay) => [stay.id, stay.patientId])).toEqual([
      [one.stayId, one.patientId],
      [two.stayId, two.patientId],
    ]);
    expect((await shared.store.read((read) => loadTimeline(read, one.patientId))).stays).toEqual([]);
  });

  it("has open stays: begun by then, not ended, not voided, of that facility", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    await other.admit("P1", "2024-03-01 10:00");
    await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00");
    const open = await bay.admit("P1", "2024-03-03 10:00");
    const gone = await bay.admit("P2", "2024-03-03 10:00");
    await voidStay(bay.at(later), { stayId: gone.stayId, reason: "wrong" });
    const at = async (time: string) => {
      const found = await shared.store.read((read) => openStays(read, bay.facilityId, { until: utc(time) }));
      return found.map(({ stay, survivorId, identifier }) => [stay.id, survivorId, identifier]);
    };
    expect(await at("2024-03-03 09:59:59.999")).toEqual([]);
    expect(await at("2024-03-03 10:00")).toEqual([[open.stayId, open.patientId, "P1"]]);
  });

  it("has open stays under the name of the surviving patient", async () => {
    const bay = await alderBay(shared.store);
    const one = await bay.admit("P1", "2024-03-05 10:00");
    const two = await bay.stay("P2", "2024-03-01 10:00", "2024-03-02 10:00");
    await mergePatients(bay.at(later), { fromId: one.patientId, intoId: two.patientId });
    const [open] = await shared.store.read((read) => openStays(read, bay.facilityId, { until: utc(later) }));
    expect(open).toMatchObject({ survivorId: two.patientId, identifier: "P2", stay: { patientId: one.patientId } });
  });

  it("has stays that touch a stretch of time, ended or not", async () => {
    const bay = await alderBay(shared.store);
    const early = await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00");
    const open = await bay.admit("P1", "2024-03-03 10:00");
    const between = async (start: string, end: string) => {
      const found = await shared.store.read((read) =>
        staysBetween(read, bay.facilityId, { start: utc(start), end: utc(end) }),
      );
      return found.map(({ stay }) => stay.id);
    };
    expect(await between("2024-03-01 00:00", "2024-03-01 10:00")).toEqual([]);
    expect(await between("2024-03-01 00:00", "2024-03-01 10:01")).toEqual([early.stayId]);
    expect(await between("2024-03-02 10:00", "2024-03-03 10:00")).toEqual([early.stayId]);
    expect(await between("2024-03-02 10:01", "2024-03-03 10:00")).toEqual([]);
    expect(await between("2024-03-02 00:00", "2024-05-01 00:00")).toEqual([early.stayId, open.stayId]);
  });

  it("can be of more stays at once than a statement takes parameters", async () => {
    const bay = await alderBay(shared.store);
    const { patientId } = await bay.stay("P1", "2024-02-01 10:00", "2024-02-02 10:00");
    // Prisma takes 998 parameters for SQLite and 32,765 for PostgreSQL: found by trying.
    const count = kind === "sqlite" ? 1_500 : 33_000;
    const columns = {
      id: "int",
      facility_id: "int",
      patient_id: "int",
      number: "text",
      admitted_at: "instant",
    } as const;
    const rest = { recorded_at: "instant", recorded_by: "int" } as const;
    const table = { table: "stay", columns: { ...columns, ...rest } };
    await shared.store.tx(
      async (tx) => {
        const rows = Array.from({ length: count }, (_, i) => [
          ...[tx.newId(), bay.facilityId, patientId, `many ${i}`, utc("2024-03-01 00:00") + i],
          ...[0, bay.personId],
        ]);
        await insertRows(tx, table, rows);
      },
      { ids: count },
    );
    const open = await shared.store.read((read) => openStays(read, bay.facilityId, { until: utc(later) }));
    expect(open).toHaveLength(count);
    const ids = open.map(({ stay }) => stay.id);
    expect(ids).toEqual(ids.toSorted((a, b) => a - b));
  });
});
