import { expect, it } from "vitest";
import { dailyCounts } from "../../../src/store/daily-counts.ts";
import { checkDailyCount, recordDailyCount } from "../../../src/usecases/months/record-daily-count.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf, versionsOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { dayOf } from "../../reference/day-text.ts";

const day = dayOf("2024-03-15");
const now = "2024-03-15 23:59";

onEachDatabase("counting by hand", (fresh) => {
  const shared = sharedStore(fresh);

  it("is recorded for a ward and day, replaces an earlier count and keeps it", async () => {
    const bay = await alderBay(shared.store);
    const act = bay.at(now);
    const count = { wardId: bay.a, day, patients: 20, catheters: 5 };
    await recordDailyCount(act, count);
    await recordDailyCount(act, { ...count, catheters: 6, reason: "one behind the curtain" });
    const found = await shared.store.read((read) => dailyCounts(read, [bay.a], { first: day, last: day }));
    expect(found).toEqual([{ ...count, catheters: 6, version: 2, recordedBy: bay.personId }]);
    const row = await shared.store.read((read) => read.db.dailyCount.findFirstOrThrow({ where: { wardId: bay.a } }));
    expect(await versionsOf(shared.store, "daily-count", row.id)).toMatchObject([
      { version: 1, body: { patients: 20, catheters: 5 }, reason: "one behind the curtain", replacedBy: bay.personId },
    ]);
    expect(await auditOf(shared.store, bay.facilityId, act.now)).toHaveLength(2);
  });

  it("leaves an audit entry with the counts", async () => {
    const bay = await alderBay(shared.store);
    const count = { wardId: bay.b, day, patients: 0, catheters: 0 };
    await recordDailyCount(bay.at(now), count);
    expect(await auditOf(shared.store, bay.facilityId, bay.at(now).now)).toEqual([
      { at: bay.at(now).now, personId: bay.personId, action: "record-daily-count", patientIds: [], details: count },
    ]);
  });

  it("is refused for a day to come, for counts that cannot be, and for a ward of elsewhere", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const count = { wardId: bay.a, day, patients: 20, catheters: 5 };
    const refused = (wrong: object) =>
      refusalOf(shared.store, () => recordDailyCount(bay.at(now), { ...count, ...wrong }));
    expect(await refused({ day: day + 1 })).toEqual({ code: "in-the-future", pointer: "/day" });
    expect(await refused({ catheters: 21 })).toEqual({ code: "count-impossible", pointer: "/catheters" });
    expect(await refused({ patients: -1 })).toEqual({ code: "count-impossible", pointer: "/patients" });
    const all = () => checkDailyCount({ day: day + 1, patients: 3, catheters: 4 }, day);
    expect(all).toThrow(
      expect.objectContaining({
        faults: [
          expect.objectContaining({ code: "in-the-future", pointer: "/day" }),
          expect.objectContaining({ code: "count-impossible", pointer: "/catheters" }),
        ],
      }),
    );
    expect(await refused({ catheters: 0.5 })).toEqual({ code: "count-impossible", pointer: "/catheters" });
    expect(await refused({ wardId: other.a })).toEqual({ code: "not-found", pointer: "/wardId" });
    checkDailyCount({ day, patients: 5, catheters: 5 }, day);
  });
});
