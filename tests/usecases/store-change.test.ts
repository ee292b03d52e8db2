import { expect, it } from "vitest";
import { revise, withStay } from "../../src/domain/timeline/timeline.ts";
import type { TimelineChange } from "../../src/store/save-timelines.ts";
import { loadTimeline } from "../../src/store/timelines.ts";
import { firstDayOf, recount, storeChanges } from "../../src/usecases/store-change.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { firstOf } from "../databases/first-of.ts";
import { ledgerOf } from "../databases/read-back.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";
import { dayOf } from "../reference/day-text.ts";

const later = "2024-03-20 10:00";

onEachDatabase("counting a patient's days anew", (fresh) => {
  const shared = sharedStore(fresh);
  const load = (patientId: number) => shared.store.read((read) => loadTimeline(read, patientId));

  it("mends what is wrong from an instant on, tells how much, and leaves earlier days alone", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-08 10:00");
    const spoil = { where: { patientId, day: { in: [dayOf("2024-03-02"), dayOf("2024-03-07")] } } };
    const extra = { patientId, day: dayOf("2024-03-15"), wardId: bay.b, stayId, catheter: true };
    await shared.store.tx(async (tx) => {
      await tx.db.patientDay.updateMany({ ...spoil, data: { wardId: bay.b } });
      await tx.db.patientDay.create({ data: extra });
    });
    const timeline = await load(patientId);
    const mend = (from: string) => shared.store.tx((tx) => recount(tx, bay.by(later), [{ timeline, from: utc(from) }]));
    expect(await mend("2024-03-06 00:00")).toEqual({ removed: 2, added: 1 });
    expect((await ledgerOf(shared.store, patientId)).slice(0, 2)).toEqual(["2024-03-02 B", "2024-03-03 A"]);
    expect(await mend("2024-03-01 00:00")).toEqual({ removed: 1, added: 1 });
    expect(await mend("2024-03-01 00:00")).toEqual({ removed: 0, added: 0 });
  });

  it("begins two days before the day of the change, where a census at 24:00 or a skipped date can reach", () => {
    expect(firstDayOf(dayOf("2024-03-03"))).toBe(dayOf("2024-03-01"));
  });

  it("keeps the days that lie after a clock which was set back", async () => {
    const bay = await alderBay(shared.store);
    const { patientId } = await bay.stay("P9", "2024-03-01 10:00", "2024-03-20 10:00");
    const timeline = await load(patientId);
    const from = utc("2024-03-01 10:00");
    const early = await shared.store.tx((tx) => recount(tx, bay.by("2024-03-05 10:00"), [{ timeline, from }]));
    expect(early).toEqual({ removed: 0, added: 0 });
    expect(await ledgerOf(shared.store, patientId)).toHaveLength(19);
  });

  it("of nobody does nothing", async () => {
    const bay = await alderBay(shared.store);
    const nobody = await shared.store.tx((tx) => recount(tx, bay.by(later), []));
    expect(nobody).toEqual({ removed: 0, added: 0 });
  });

  it("follows from storing a change, for several patients in one transaction", async () => {
    const bay = await alderBay(shared.store);
    const one = await bay.stay("P1", "2024-03-01 10:00", "2024-03-03 10:00");
    const two = await bay.stay("P2", "2024-03-01 10:00", "2024-03-03 10:00");
    const changes: TimelineChange[] = [];
    for (const { patientId } of [one, two]) {
      const before = await load(patientId);
      const stay = firstOf(before.stays);
      const wardStays = stay.wardStays.map((w) => revise(w, { wardId: bay.b }));
      changes.push({ before, after: withStay(before, { ...stay, wardStays }) });
    }
    await shared.store.tx((tx) => storeChanges(tx, bay.by(later), changes));
    for (const { patientId } of [one, two])
      expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-02 B", "2024-03-03 B"]);
  });

  it("counts each day of a stay around the clock change once", async () => {
    const bay = await alderBay(shared.store);
    // Source: IANA time zone database, America/New_York puts the clocks forward on 2024-03-10 at 02:00.
    await shared.store.tx((tx) =>
      tx.db.facility.update({ where: { id: bay.facilityId }, data: { zone: "America/New_York" } }),
    );
    const { patientId } = await bay.stay("P1", "2024-03-09 17:00", "2024-03-11 16:00");
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-10 A", "2024-03-11 A"]);
  });
});
