import { expect, it } from "vitest";
import { dailyCounts, putDailyCounts } from "../../src/store/daily-counts.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { versionsOf } from "../databases/read-back.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";
import { dayOf } from "../reference/day-text.ts";

const day = dayOf("2024-03-01");

onEachDatabase("counts made by hand", (fresh) => {
  const shared = sharedStore(fresh);
  const rowOf = (wardId: number) =>
    shared.store.read((read) => read.db.dailyCount.findUniqueOrThrow({ where: { wardId_day: { wardId, day } } }));

  it("are given back by ward and day, within the days and wards that are asked for", async () => {
    const { a, b, by, personId } = await alderBay(shared.store);
    const counts = [
      { wardId: b, day, patients: 9, catheters: 2 },
      { wardId: a, day: day + 1, patients: 0, catheters: 0 },
      { wardId: a, day, patients: 12, catheters: 3 },
    ];
    await shared.store.tx((tx) => putDailyCounts(tx, by("2024-03-02 08:00"), counts));
    const found = (wardIds: number[], first: number, last: number) =>
      shared.store.read((read) => dailyCounts(read, wardIds, { first, last }));
    const [onB, nextDay, onA] = counts.map((count) => ({ ...count, version: 1, recordedBy: personId }));
    expect(await found([a, b], day, day + 1)).toEqual([onA, nextDay, onB]);
    expect(await found([a], day, day)).toEqual([onA]);
    expect(await found([a], day + 2, day + 9)).toEqual([]);
    const row = await rowOf(a);
    expect([row.recordedAt.getTime(), row.version]).toEqual([utc("2024-03-02 08:00"), 1]);
  });

  it("replace an earlier count of the day, which is kept; the same count again changes nothing", async () => {
    const { a, by, personId } = await alderBay(shared.store);
    const put = (time: string, patients: number) =>
      shared.store.tx((tx) =>
        putDailyCounts(tx, { ...by(time), reason: "miscounted" }, [{ wardId: a, day, patients, catheters: 1 }]),
      );
    await put("2024-03-02 08:00", 12);
    await put("2024-03-02 09:00", 12);
    const { id, version, recordedAt } = await rowOf(a);
    expect([version, recordedAt.getTime()]).toEqual([1, utc("2024-03-02 08:00")]);
    await put("2024-03-02 10:00", 13);
    expect(await rowOf(a)).toMatchObject({ id, patients: 13, version: 2, recordedBy: personId });
    expect(await versionsOf(shared.store, "daily-count", id)).toEqual([
      {
        version: 1,
        body: { wardId: a, day, patients: 12, catheters: 1 },
        replacedAt: utc("2024-03-02 10:00"),
        replacedBy: personId,
        reason: "miscounted",
      },
    ]);
  });

  it("of one ward and day, made by several at once, leave one count and every replaced one", async () => {
    const { a, by } = await alderBay(shared.store);
    const put = (patients: number) =>
      shared.store.tx((tx) => putDailyCounts(tx, by("2024-03-02 08:00"), [{ wardId: a, day, patients, catheters: 0 }]));
    await Promise.all([1, 2, 3, 4, 5].map(put));
    const { id, version, patients } = await rowOf(a);
    const kept = await versionsOf(shared.store, "daily-count", id);
    expect(version).toBe(5);
    expect([...kept.map(({ body }) => body.patients), patients].sort()).toEqual([1, 2, 3, 4, 5]);
  });
});
