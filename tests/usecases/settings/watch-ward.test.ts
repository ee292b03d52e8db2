import { expect, it } from "vitest";
import type { Month } from "../../../shared/day.ts";
import { scopesOfWard } from "../../../src/store/scopes.ts";
import { changeWatch, watchWard } from "../../../src/usecases/settings/watch-ward.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf, versionsOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";

const now = "2024-03-20 10:00";
const reason = "ward closes";

onEachDatabase("watching a ward", (fresh) => {
  const shared = sharedStore(fresh);
  const months = (from: string, to: string | null) => ({ fromMonth: from as Month, toMonth: to as Month | null });
  const watch = (bay: AlderBay, from: string, to: string | null, wardId = bay.a) =>
    watchWard(bay.at(now), { wardId, ...months(from, to), edition: "us-2024" });
  const scopes = async (bay: AlderBay) =>
    (await shared.store.read((read) => scopesOfWard(read, bay.a))).map((s) => [s.fromMonth, s.toMonth]);

  it("is recorded with its months and edition, and an audit entry", async () => {
    const bay = await alderBay(shared.store);
    const { scopeId } = await watch(bay, "2024-01", "2024-03");
    expect(await scopes(bay)).toEqual([["2024-01", "2024-03"]]);
    expect(await auditOf(shared.store, bay.facilityId, bay.at(now).now)).toEqual([
      {
        at: bay.at(now).now,
        personId: bay.personId,
        action: "watch-ward",
        patientIds: [],
        details: { scopeId, wardId: bay.a, ...months("2024-01", "2024-03"), edition: "us-2024" },
      },
    ]);
  });

  it("is refused in a month in which the ward is watched, and names the other scope", async () => {
    const bay = await alderBay(shared.store);
    const middle = await watch(bay, "2024-04", "2024-06");
    const open = await watch(bay, "2024-10", null);
    for (const [from, to, other] of [
      ["2024-06", "2024-06", middle],
      ["2024-01", "2024-04", middle],
      ["2024-01", "2024-08", middle],
      ["2024-05", "2024-05", middle],
      ["2024-07", null, open],
      ["2030-01", "2030-02", open],
    ] as const)
      expect(await refusalOf(shared.store, () => watch(bay, from, to))).toEqual({
        code: "scope-overlaps",
        pointer: "",
        other: `scope ${other.scopeId}`,
      });
    await watch(bay, "2024-07", "2024-09");
    await watch(bay, "2024-03", "2024-03");
    await watch(bay, "2024-05", null, bay.b);
    expect(await scopes(bay)).toHaveLength(4);
  });

  it("is refused for months in the wrong order and for a ward of elsewhere", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    expect(await refusalOf(shared.store, () => watch(bay, "2024-04", "2024-03"))).toEqual({
      code: "end-before-start",
      pointer: "/toMonth",
    });
    expect(await refusalOf(shared.store, () => watch(bay, "2024-04", null, other.a))).toEqual({
      code: "not-found",
      pointer: "/wardId",
    });
  });

  it("can be ended, opened again or voided; what was said is kept", async () => {
    const bay = await alderBay(shared.store);
    const { scopeId } = await watch(bay, "2024-01", null);
    const act = bay.at("2024-03-21 10:00");
    await changeWatch(act, { wardId: bay.a, scopeId, toMonth: "2024-02" as Month, reason });
    expect(await scopes(bay)).toEqual([["2024-01", "2024-02"]]);
    await changeWatch(bay.at("2024-03-21 11:00"), { wardId: bay.a, scopeId, toMonth: null, reason });
    await changeWatch(bay.at("2024-03-21 12:00"), { wardId: bay.a, scopeId, voided: true, reason: "wrong ward" });
    expect(await scopes(bay)).toEqual([]);
    const kept = await versionsOf(shared.store, "scope", scopeId);
    expect(kept.map((v) => [v.version, v.body.toMonth, v.reason])).toEqual([
      [1, null, reason],
      [2, "2024-02", reason],
      [3, null, "wrong ward"],
    ]);
    const audit = await auditOf(shared.store, bay.facilityId, act.now);
    expect(audit.map((entry) => entry.action)).toEqual(["change-watch", "change-watch", "change-watch"]);
    await watch(bay, "2024-01", null);
  });

  it("cannot be extended into months of another scope, nor end before it begins", async () => {
    const bay = await alderBay(shared.store);
    const { scopeId } = await watch(bay, "2024-01", "2024-03");
    const later = await watch(bay, "2024-06", null);
    const until = (month: string | null) => () =>
      changeWatch(bay.at(now), { wardId: bay.a, scopeId, toMonth: month as Month | null, reason });
    const overlap = { code: "scope-overlaps", pointer: "", other: `scope ${later.scopeId}` };
    expect(await refusalOf(shared.store, until("2024-06"))).toEqual(overlap);
    expect(await refusalOf(shared.store, until(null))).toEqual(overlap);
    expect(await refusalOf(shared.store, until("2023-12"))).toEqual({ code: "end-before-start", pointer: "/toMonth" });
    await until("2024-05")();
  });

  it("is not changed by who saw an earlier version, who is shown the scope as it is by now", async () => {
    const bay = await alderBay(shared.store);
    const { scopeId } = await watch(bay, "2024-01", null);
    const end = (toMonth: string, seenVersion: number) =>
      changeWatch(bay.at(now), { wardId: bay.a, scopeId, toMonth: toMonth as Month, reason, seenVersion });
    expect(await end("2024-02", 1)).toEqual({ scopeId, version: 2 });
    await expect(end("2024-03", 1)).rejects.toMatchObject({
      current: { fromMonth: "2024-01", toMonth: "2024-02", edition: "us-2024", version: 2 },
    });
    expect(await scopes(bay)).toEqual([["2024-01", "2024-02"]]);
  });

  it("is not to be found from elsewhere, nor once it was voided", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const { scopeId } = await watch(bay, "2024-01", null);
    const voided = (by: AlderBay) => () => changeWatch(by.at(now), { wardId: bay.a, scopeId, voided: true, reason });
    expect(await refusalOf(shared.store, voided(other))).toMatchObject({ code: "not-found" });
    await voided(bay)();
    expect(await refusalOf(shared.store, voided(bay))).toMatchObject({ code: "not-found" });
  });
});
