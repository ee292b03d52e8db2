import { expect, it } from "vitest";
import { openStays } from "../../../src/store/timelines.ts";
import { openDays, sumsByDay } from "../../../src/usecases/months/count-days.ts";
import { loadCountingRules } from "../../../src/usecases/months/counting-rules.ts";
import { mergePatients } from "../../../src/usecases/record/merge-patients.ts";
import { movePatient } from "../../../src/usecases/record/move-patient.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { inserted } from "../../databases/urethral.ts";
import { utc } from "../../databases/utc.ts";
import { dayOf, textOf } from "../../reference/day-text.ts";

const one = { patientId: 1, identifier: "P1", stayId: 10 };

onEachDatabase("days of patients still there", (fresh) => {
  const shared = sharedStore(fresh);

  it("are counted up to now, the census of this very moment with them, for the survivor", async () => {
    const bay = await alderBay(shared.store);
    const open = await bay.admit("P1", "2024-03-01 10:00");
    const earlier = await bay.stay("P2", "2024-02-01 10:00", "2024-02-02 10:00");
    await movePatient(bay.at("2024-03-02 12:00"), {
      stayId: open.stayId,
      movedAt: utc("2024-03-02 12:00"),
      wardId: bay.b,
    });
    await inserted(bay, "2024-03-03 12:00", open.stayId, "2024-03-03 11:00");
    await mergePatients(bay.at("2024-03-03 13:00"), { fromId: open.patientId, intoId: earlier.patientId });
    const at = (now: string) =>
      shared.store.read(async (read) => {
        const range = { first: dayOf("2024-03-01"), last: dayOf("2024-03-31") };
        const rules = await loadCountingRules(read, bay.facilityId, () => range);
        return openDays(await openStays(read, bay.facilityId, { until: utc(now) }), rules, utc(now));
      });
    const rows = await at("2024-03-04 00:00");
    expect(rows.map((row) => [textOf(row.day), row.wardId, row.catheter])).toEqual([
      ["2024-03-03", bay.b, false],
      ["2024-03-04", bay.b, true],
    ]);
    expect(rows[0]).toMatchObject({ patientId: earlier.patientId, identifier: "P2", stayId: open.stayId });
    expect(await at("2024-03-03 23:59:59.999")).toHaveLength(1);
  });

  it("are one a day for a person, whichever of their records has the stays", async () => {
    const bay = await alderBay(shared.store);
    await bay.admit("P1", "2024-03-01 10:00");
    await bay.admit("P2", "2024-03-02 10:00");
    const now = utc("2024-03-03 12:00");
    const rows = await shared.store.read(async (read) => {
      const range = { first: dayOf("2024-03-01"), last: dayOf("2024-03-31") };
      const rules = await loadCountingRules(read, bay.facilityId, () => range);
      const stays = await openStays(read, bay.facilityId, { until: now });
      // Two stays at one time cannot be merged, so that both are one person's is said here alone.
      const [{ survivorId, identifier } = { survivorId: 0, identifier: "" }] = stays;
      const merged = stays.map((stay) => ({ ...stay, survivorId, identifier }));
      return [stays, merged, merged.toReversed()].map((owned) => openDays(owned, rules, now));
    });
    const once = ["2024-03-02 P1", "2024-03-03 P1"];
    expect(rows.map((days) => days.map((row) => `${textOf(row.day)} ${row.identifier}`))).toEqual([
      [...once, "2024-03-03 P2"],
      ...[once, once],
    ]);
  });

  it("are added to the sums of the ledger, or begin a sum of their own", () => {
    const ledger = [
      { wardId: 1, day: 5, patientDays: 3, catheterDays: 1 },
      { wardId: 2, day: 5, patientDays: 1, catheterDays: 0 },
    ];
    const open = [
      { ...one, wardId: 1, day: 5, catheter: true },
      { ...one, wardId: 1, day: 6, catheter: false },
      { ...one, wardId: 3, day: 6, catheter: true },
      { ...one, wardId: 3, day: 6, catheter: false },
    ];
    expect(sumsByDay(ledger, open)).toEqual([
      { wardId: 1, day: 5, patientDays: 4, catheterDays: 2 },
      { wardId: 2, day: 5, patientDays: 1, catheterDays: 0 },
      { wardId: 1, day: 6, patientDays: 1, catheterDays: 0 },
      { wardId: 3, day: 6, patientDays: 2, catheterDays: 1 },
    ]);
    expect(sumsByDay(ledger, [])).toEqual(ledger);
  });
});
