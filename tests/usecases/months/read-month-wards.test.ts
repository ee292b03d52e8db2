import { describe, expect, it } from "vitest";
import { gapWords } from "../../../shared/gap-words.ts";
import { gapsOf } from "../../../src/domain/reports/gaps.ts";
import { monthSheet } from "../../../src/domain/reports/month.ts";
import type { MonthFacts } from "../../../src/domain/reports/month-facts.ts";
import { putWardSetting, addWard as storeWard } from "../../../src/store/wards.ts";
import { loadMonth } from "../../../src/usecases/months/load-month.ts";
import { movePatient } from "../../../src/usecases/record/move-patient.ts";
import { addWard } from "../../../src/usecases/wards/add-ward.ts";
import { describeWard } from "../../../src/usecases/wards/describe-ward.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";
import { dayOf, textOf } from "../../reference/day-text.ts";

const march = { first: dayOf("2024-03-01"), last: dayOf("2024-03-31") };
const april = { first: dayOf("2024-04-01"), last: dayOf("2024-04-30") };
const later = "2024-05-09 12:00";

onEachDatabase("a month of a ward that was not always there", (fresh) => {
  const shared = sharedStore(fresh);

  /** Ward C, of which something is said from that day on, and nothing before. */
  async function opened(bay: AlderBay, fromDay: string): Promise<number> {
    const setting = "inpatient";
    const said = { code: "C", name: "Ward C", type: null, setting, beds: null, openedDay: dayOf(fromDay) } as const;
    return (await addWard(bay.at("2024-01-01 08:00"), said)).wardId;
  }

  const read = (bay: AlderBay, days: { first: number; last: number }, wardIds?: number[]) =>
    loadMonth(bay.at(later), { days, ...(wardIds ? { wardIds } : {}) });
  const wardC = (facts: MonthFacts) => facts.wards.find((ward) => ward.code === "C");
  const notOpen = (facts: MonthFacts) =>
    facts.findings.map((f) => `${f.kind} ${textOf(f.start / 86_400_000)} to ${textOf((f.end ?? 0) / 86_400_000)}`);

  it.each([
    ["2024-02-29", "yes"],
    ["2024-03-01", "yes"],
    ["2024-03-02", "partly"],
    ["2024-03-31", "partly"],
    ["2024-04-01", undefined],
  ])("that opened on %s says %s of March: it was there from then on, and is never unknown", async (day, expected) => {
    const bay = await alderBay(shared.store);
    await opened(bay, day);
    expect(wardC(await read(bay, march))?.inpatient).toBe(expected);
    expect(wardC(await read(bay, april))?.inpatient).toBe("yes");
  });

  it("counts from the day it opened, and tells what lies before", async () => {
    const bay = await alderBay(shared.store);
    const wardId = await opened(bay, "2024-03-15");
    const { stayId, wardStayId } = await bay.stay("P1", "2024-03-11 00:00", "2024-03-18 10:00", { wardId });
    const facts = await read(bay, march);
    // At midnight on the 15th, 16th, 17th and 18th; the four midnights before are not counted.
    expect(wardC(facts)).toMatchObject({ inpatient: "partly", patientDays: 4 });
    expect(facts.findings).toEqual([
      {
        ...{ kind: "ward-not-open", wardId, stayId, entry: `ward stay ${wardStayId}` },
        ...{ start: utc("2024-03-11 00:00"), end: utc("2024-03-15 00:00") },
      },
    ]);
    const sheet = monthSheet(facts);
    expect(sheet.rows.find(([code]) => code === "C")).toEqual([
      ...["C", "Ward C", 4, 0, 0, "inpatient on some days only"],
    ]);
    expect(sheet.total?.slice(2, 4)).toEqual([4, 0]);
    expect(sheet.cautions).toContain(
      "Data quality: 1 time on a ward lies before anything was said of that ward, and is not counted.",
    );
  });

  it("that opened on the first of the next month has its setting missing in this one, where it had a patient", async () => {
    const bay = await alderBay(shared.store);
    const wardId = await opened(bay, "2024-04-01");
    await bay.stay("P1", "2024-03-30 00:00", "2024-04-03 10:00", { wardId });
    const before = await read(bay, march);
    expect(before.wards.map((ward) => ward.code)).toEqual(["A", "B", "C"]);
    expect(wardC(before)).toMatchObject({ inpatient: "unknown", patientDays: 0 });
    // The month cannot be signed as if these patient-days were none.
    const blocking = gapsOf(before, [], []).flatMap(({ kind, wardId: of }) =>
      gapWords[kind].blocks && of === wardId ? [kind] : [],
    );
    expect(blocking).toEqual(["setting-missing"]);
    const part = await read(bay, { first: dayOf("2024-03-15"), last: dayOf("2024-04-15") });
    expect(gapsOf(part, [], []).flatMap(({ kind }) => (gapWords[kind].blocks ? [kind] : []))).toContain(
      "ward-not-open",
    );
    expect(notOpen(before)).toEqual(["ward-not-open 2024-03-30 to 2024-04-01"]);
    const after = await read(bay, april);
    expect(wardC(after)).toMatchObject({ inpatient: "yes", patientDays: 3 });
    expect(notOpen(after)).toEqual([]);
  });

  it("is told of to those who ask for that ward, not to those of another one", async () => {
    const bay = await alderBay(shared.store);
    const wardId = await opened(bay, "2024-03-15");
    const { stayId } = await bay.admit("P1", "2024-03-11 00:00", { wardId });
    await movePatient(bay.at("2024-03-13 00:00"), { stayId, movedAt: utc("2024-03-13 00:00"), wardId: bay.a });
    expect(notOpen(await read(bay, march, [wardId]))).toEqual(["ward-not-open 2024-03-11 to 2024-03-13"]);
    expect(notOpen(await read(bay, march, [bay.a]))).toEqual([]);
  });

  describe("that moves alone had named before somebody said what it is", () => {
    /** Ward C, named by moves, and from that day on said to be for inpatients. */
    async function described(bay: AlderBay, fromDay: string): Promise<number> {
      const by = bay.by("2024-01-01 08:00");
      const wardId = await shared.store.tx(async (tx) => {
        const id = await storeWard(tx, by, { code: "C", namedOnly: true });
        await putWardSetting(tx, by, id, { fromDay: 0, name: "C", type: null, setting: null, beds: null });
        return id;
      });
      const said = { wardId, name: "Ward C", type: null, setting: "inpatient", beds: null } as const;
      await describeWard(bay.at(later), { ...said, fromDay: dayOf(fromDay), reason: "Described at last" });
      return wardId;
    }

    it("is as one that opened that day: counted from then on, and not unknown before", async () => {
      const bay = await alderBay(shared.store);
      const wardId = await described(bay, "2024-03-15");
      await bay.stay("P1", "2024-03-11 00:00", "2024-03-18 10:00", { wardId });
      const facts = await read(bay, march);
      expect(wardC(facts)).toMatchObject({ inpatient: "partly", patientDays: 4 });
      expect(notOpen(facts)).toEqual(["ward-not-open 2024-03-11 to 2024-03-15"]);
      expect(wardC(await read(bay, april))).toMatchObject({ inpatient: "yes" });
      const before = await read(bay, { first: dayOf("2024-02-01"), last: dayOf("2024-02-29") });
      expect([wardC(before), notOpen(before)]).toEqual([undefined, []]);
    });

    it("is counted in whole once it is described from its first patient on", async () => {
      const bay = await alderBay(shared.store);
      const wardId = await described(bay, "2024-03-11");
      await bay.stay("P1", "2024-03-11 00:00", "2024-03-18 10:00", { wardId });
      const facts = await read(bay, march);
      expect(wardC(facts)).toMatchObject({ inpatient: "partly", patientDays: 8 });
      expect(notOpen(facts)).toEqual([]);
    });
  });

  it("stays unknown when nobody ever said anything of it, and is no reason for a finding", async () => {
    const bay = await alderBay(shared.store);
    const by = bay.by("2024-01-01 08:00");
    const wardId = await shared.store.tx((tx) => storeWard(tx, by, { code: "C", namedOnly: true }));
    await bay.stay("P1", "2024-03-11 00:00", "2024-03-18 10:00", { wardId });
    const facts = await read(bay, march);
    expect(wardC(facts)).toMatchObject({ inpatient: "unknown", patientDays: 0 });
    expect(facts.findings).toEqual([]);
    const alone = monthSheet(await read(bay, march, [wardId]));
    expect(alone.rows.map((row) => row.slice(2, 5))).toEqual([[null, null, null]]);
    expect(alone.total).toEqual(["All units", "", null, null, null, "no unit is counted"]);
  });
});
