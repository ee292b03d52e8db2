import { expect, it } from "vitest";
import type { Month } from "../../../shared/day.ts";
import { defaultPolicy } from "../../../src/domain/policy/default-policy.ts";
import { determinationsOfCase } from "../../../src/store/determinations.ts";
import { wards } from "../../../src/store/wards.ts";
import { recordSpecimen } from "../../../src/usecases/cultures/record-specimen.ts";
import { verifyLedger } from "../../../src/usecases/jobs/check-ledger.ts";
import { loadMonth } from "../../../src/usecases/months/load-month.ts";
import { recordDailyCount } from "../../../src/usecases/months/record-daily-count.ts";
import { setPolicy } from "../../../src/usecases/settings/set-policy.ts";
import { watchWard } from "../../../src/usecases/settings/watch-ward.ts";
import { addWard } from "../../../src/usecases/wards/add-ward.ts";
import { closeWard } from "../../../src/usecases/wards/close-ward.ts";
import { mergeWards } from "../../../src/usecases/wards/merge-wards.ts";
import { readWardHistory } from "../../../src/usecases/wards/read-ward-history.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf, versionsOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";
import { importFiles } from "../imports/files.ts";

const now = "2024-04-09 12:00";
const march = { first: 19_783, last: 19_813 };
const reason = "A misspelling in the file of 2 March";
const header = "stay,patient,ward,from,to";

onEachDatabase("merging a ward into another", (fresh) => {
  const shared = sharedStore(fresh);
  const merge = (bay: AlderBay, wardId: number, intoWardId: number) =>
    mergeWards(bay.at(now), { wardId, intoWardId, reason });
  const days = async (bay: AlderBay) =>
    (await loadMonth(bay.at(now), { days: march })).wards.map(({ code, patientDays }) => `${code} ${patientDays}`);

  it("moves its stays and days, and both are counted again", async () => {
    const bay = await alderBay(shared.store);
    const wrong = await bay.addWard("a 1", "inpatient");
    const { wardStayId } = await bay.stay("P1", "2024-03-02 10:00", "2024-03-06 10:00", { wardId: wrong });
    await bay.stay("P2", "2024-03-03 10:00", "2024-03-05 10:00");
    // Still there.
    await bay.admit("P3", "2024-03-30 10:00", { wardId: wrong });
    expect(await days(bay)).toEqual(["A 2", "B 0", "a 1 5"]);
    await merge(bay, wrong, bay.a);
    expect(await days(bay)).toEqual(["A 7", "B 0"]);
    const { rows, differences } = await verifyLedger(bay.at(now));
    expect([rows, differences]).toEqual([6, []]);
    expect(await versionsOf(shared.store, "ward-stay", wardStayId)).toMatchObject([
      {},
      { reason, body: { wardId: wrong } },
    ]);
    const { merged } = await readWardHistory(bay.at(now), { wardId: bay.a });
    expect(merged).toEqual([{ wardId: wrong, code: "a 1", reason, mergedAt: bay.at(now).now, mergedBy: bay.personId }]);
    const audit = await auditOf(shared.store, bay.facilityId, bay.at(now).now);
    expect(audit.filter(({ action }) => action === "merge-wards")).toMatchObject([
      { details: { wardId: wrong, intoWardId: bay.a, patients: 2, reason } },
    ]);
  });

  it("lets its code mean the other ward in later files, and keeps the code from another ward", async () => {
    const bay = await alderBay(shared.store);
    const wrong = await bay.addWard("a 1", "inpatient");
    await merge(bay, wrong, bay.a);
    await importFiles(bay.at(now), {
      "wards.csv": ["ward,name,setting", "a 1,Wrong name,outpatient"],
      "moves.csv": [header, "S1,P1,a 1,2024-03-02T10:00,2024-03-04T10:00"],
    });
    expect(await days(bay)).toEqual(["A 2", "B 0"]);
    const found = await shared.store.read((read) => wards(read, bay.facilityId));
    expect(found.map(({ code, settings }) => [code, settings.at(-1)?.name])).toEqual([
      ["A", "Ward A"],
      ["B", "Ward B"],
    ]);
    const again = { code: "a 1", name: "x", type: null, setting: "inpatient", beds: null, openedDay: null } as const;
    expect((await refusalOf(shared.store, () => addWard(bay.at(now), again))).code).toBe("ward-code-taken");
  });

  it("moves counts, surveillance and people, and what both have alike is one", async () => {
    const bay = await alderBay(shared.store);
    const wrong = await bay.addWard("a 1", "inpatient");
    const act = bay.at(now);
    await recordDailyCount(act, { wardId: wrong, day: 19_790, patients: 3, catheters: 1, replaces: null });
    const watch = (wardId: number, fromMonth: string, toMonth: string) =>
      watchWard(act, { wardId, fromMonth: fromMonth as Month, toMonth: toMonth as Month, edition: "us-2024" });
    await watch(bay.a, "2024-03", "2024-06");
    await watch(wrong, "2024-04", "2024-05");
    await watch(wrong, "2024-01", "2024-02");
    await merge(bay, wrong, bay.a);
    const of = { wardId: bay.a };
    await shared.store.read(async ({ db }) => {
      expect(await db.dailyCount.count({ where: of })).toBe(1);
      const months = await db.scope.findMany({ where: { ...of, voidKey: 0 }, orderBy: { fromMonth: "asc" } });
      expect(months.map(({ fromMonth, toMonth }) => [fromMonth, toMonth])).toEqual([
        ["2024-01", "2024-02"],
        ["2024-03", "2024-06"],
      ]);
    });
  });

  it("takes the cultures of the other ward into the scope that moves to it", async () => {
    const bay = await alderBay(shared.store);
    const wrong = await bay.addWard("a 1", "inpatient");
    const act = bay.at(now);
    const months = { fromMonth: "2024-03" as Month, toMonth: "2024-03" as Month };
    await watchWard(act, { wardId: wrong, ...months, edition: "us-2024" });
    const { patientId } = await bay.admit("P1", "2024-03-01 08:00");
    const { specimenId } = await recordSpecimen(act, {
      ...{ patientId, kind: "urine", method: "culture", status: "final", collectedAt: utc("2024-03-10 08:00") },
      organisms: [{ name: "Escherichia coli", count: ">100000" }],
    });
    const last = async () =>
      (await shared.store.read((read) => determinationsOfCase(read, bay.facilityId, specimenId))).at(-1);
    expect(await last()).toMatchObject({ state: "out-of-scope" });
    await merge(bay, wrong, bay.a);
    expect(await last()).toMatchObject({
      ...{ state: "waiting", cause: "merge-wards" },
      mayCount: JSON.stringify([{ wardId: bay.a, month: "2024-03" }]),
    });
  });

  it("is refused by name into itself, in a circle, into a closed ward, and for what contradicts; nothing is stored", async () => {
    const bay = await alderBay(shared.store);
    const [wrong, old] = [await bay.addWard("a 1", "inpatient"), await bay.addWard("old", "inpatient")];
    const act = bay.at(now);
    const refused = async (wardId: number, intoWardId: number) => {
      const { code, pointer } = await refusalOf(shared.store, () => merge(bay, wardId, intoWardId));
      return `${code} ${pointer}`;
    };
    expect(await refused(wrong, wrong)).toBe("same-ward /intoWardId");
    expect(await refused(wrong, 999_999_999)).toBe("not-found /intoWardId");
    await merge(bay, old, wrong);
    expect(await refused(wrong, old)).toBe("ward-gone /intoWardId");
    expect(await refused(old, bay.a)).toBe("ward-gone ");
    await closeWard(act, { wardId: bay.b, closedDay: 19_800 });
    expect(await refused(wrong, bay.b)).toBe("ward-closed /intoWardId");
    const count = { day: 19_790, patients: 3, catheters: 1, replaces: null };
    await recordDailyCount(act, { wardId: wrong, ...count });
    await recordDailyCount(act, { wardId: bay.a, ...count, patients: 4 });
    expect(await refused(wrong, bay.a)).toBe("ward-counts-overlap ");
    // Recorded alike for both, it is one count.
    await recordDailyCount(act, { wardId: wrong, ...count, patients: 4, replaces: 1 });
    await merge(bay, wrong, bay.a);
    const kept = await shared.store.read((read) => read.db.dailyCount.findMany({ where: { wardId: bay.a } }));
    expect(kept.map(({ day, patients }) => [day, patients])).toEqual([[19_790, 4]]);
  });

  it("is refused while the wards are watched differently, or the ward has a policy of its own", async () => {
    const bay = await alderBay(shared.store);
    const act = bay.at(now);
    const [watched, ruled] = [await bay.addWard("w", "inpatient"), await bay.addWard("r", "inpatient")];
    const months = { fromMonth: "2024-03" as Month, toMonth: null };
    await watchWard(act, { wardId: watched, ...months, edition: "ecdc-2017" });
    await watchWard(act, { wardId: bay.a, ...months, edition: "us-2024" });
    expect((await refusalOf(shared.store, () => merge(bay, watched, bay.a))).code).toBe("scope-overlaps");
    await setPolicy(act, { wardId: ruled, fromDay: 19_800, body: defaultPolicy, replaces: 0, reason });
    expect((await refusalOf(shared.store, () => merge(bay, ruled, bay.b))).code).toBe("ward-has-policy");
  });
});
