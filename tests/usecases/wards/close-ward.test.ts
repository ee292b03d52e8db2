import { expect, it } from "vitest";
import { wards } from "../../../src/store/wards.ts";
import { voidStay } from "../../../src/usecases/record/void-entry.ts";
import { closeWard } from "../../../src/usecases/wards/close-ward.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { firstOf } from "../../databases/first-of.ts";
import { auditOf, versionsOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { dayOf } from "../../reference/day-text.ts";

const now = "2024-03-10 10:00";

onEachDatabase("closing a ward", (fresh) => {
  const shared = sharedStore(fresh);
  const close = (bay: AlderBay, day: string | null, wardId = bay.a, reason?: string) =>
    closeWard(bay.at(now), {
      ...{ wardId, closedDay: day === null ? null : dayOf(day) },
      ...(reason === undefined ? {} : { reason }),
    });
  const closedDay = async (bay: AlderBay) =>
    firstOf(await shared.store.read((r) => wards(r, bay.facilityId, [bay.a]))).closedDay;
  const inUse = { code: "ward-in-use", pointer: "/closedDay" };

  it("gives it a last day, keeps what was said before, and may be taken back", async () => {
    const bay = await alderBay(shared.store);
    await close(bay, "2024-03-31", bay.a, "Moved to the new building");
    expect(await closedDay(bay)).toBe(dayOf("2024-03-31"));
    await close(bay, null);
    expect(await closedDay(bay)).toBeNull();
    expect(await versionsOf(shared.store, "ward", bay.a)).toMatchObject([
      { version: 1, body: { closedDay: null }, reason: "Moved to the new building" },
      { version: 2, body: { closedDay: dayOf("2024-03-31") }, reason: null },
    ]);
    const audit = await auditOf(shared.store, bay.facilityId, bay.at(now).now);
    expect(audit.map(({ action, details }) => [action, details])).toEqual([
      ["close-ward", { wardId: bay.a, closedDay: dayOf("2024-03-31"), reason: "Moved to the new building" }],
      ["close-ward", { wardId: bay.a, closedDay: null }],
    ]);
  });

  it("is refused while the record has patients there after that day", async () => {
    const bay = await alderBay(shared.store);
    await bay.stay("P1", "2024-03-01 10:00", "2024-03-05 00:01");
    expect(await refusalOf(shared.store, () => close(bay, "2024-03-04"))).toEqual(inUse);
    await close(bay, "2024-03-05");
    await bay.stay("P2", "2024-03-02 10:00", "2024-03-03 00:00", { wardId: bay.b });
    // Who left as the day ended was not there after it.
    await close(bay, "2024-03-02", bay.b);
  });

  it("is refused for a day that is over while somebody is still there, and allowed from today on", async () => {
    const bay = await alderBay(shared.store);
    const { stayId } = await bay.admit("P1", "2024-03-01 10:00");
    expect(await refusalOf(shared.store, () => close(bay, "2024-03-09"))).toEqual(inUse);
    await close(bay, "2024-03-10");
    await voidStay(bay.at(now), { stayId, reason: "wrong patient" });
    await close(bay, "2024-03-09");
  });

  it("is refused before the ward opened, and for a ward of elsewhere", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    await shared.store.tx((tx) =>
      tx.db.ward.update({ where: { id: bay.a }, data: { openedDay: dayOf("2024-02-01") } }),
    );
    expect(await refusalOf(shared.store, () => close(bay, "2024-01-31"))).toEqual({
      ...{ code: "end-before-start", pointer: "/closedDay" },
    });
    await close(bay, "2024-02-01");
    expect(await refusalOf(shared.store, () => close(bay, "2024-03-31", other.a))).toEqual({
      ...{ code: "not-found", pointer: "/wardId" },
    });
  });
});
