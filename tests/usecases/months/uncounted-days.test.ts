import { expect, it } from "vitest";
import type { Month } from "../../../shared/day.ts";
import { cautionsOf } from "../../../src/domain/reports/cautions.ts";
import { loadCountingRules } from "../../../src/usecases/months/counting-rules.ts";
import { loadMonth } from "../../../src/usecases/months/load-month.ts";
import { readFigures } from "../../../src/usecases/months/read-figures.ts";
import { readMonthGaps } from "../../../src/usecases/months/read-month-gaps.ts";
import { readUncountedDays } from "../../../src/usecases/months/read-uncounted-days.ts";
import { uncountedDays, uncountedOfStays } from "../../../src/usecases/months/uncounted-days.ts";
import { correctWardStay } from "../../../src/usecases/record/correct-entry.ts";
import { readPatient } from "../../../src/usecases/record/read-patient.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf } from "../../databases/read-back.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { importFiles } from "../imports/files.ts";

const now = "2024-04-09 12:00";
const march = "2024-03" as Month;
const days = { first: 19_783, last: 19_813 };
const header = "stay,patient,ward,from,to,absence";

onEachDatabase("time of a stay without a ward", (fresh) => {
  const shared = sharedStore(fresh);

  /** From the emergency area on 2 March; the move to ward A was refused, and the discharge is of the 15th. */
  async function lostMove(): Promise<AlderBay> {
    const bay = await alderBay(shared.store);
    await bay.addWard("ED", "outpatient");
    await importFiles(bay.at(now), {
      "stays.csv": ["stay,patient,admitted,discharged", "S1,P1,2024-03-02T08:00,2024-03-15T09:00"],
      "moves.csv": [header, "S1,P1,ED,2024-03-02T08:00,2024-03-03T12:00,"],
    });
    return bay;
  }
  const gapsOf = async (bay: AlderBay, wardIds?: readonly number[]) =>
    (await readMonthGaps(bay.at(now), { month: march, ...(wardIds ? { wardIds } : {}) })).gaps
      .filter(({ kind }) => kind.endsWith("-at-census"))
      .map(({ kind, wardId, count, blocks }) => [kind, wardId, count, blocks]);
  const patientOf = async (bay: AlderBay) => {
    const where = { facilityId: bay.facilityId };
    const { id } = await shared.store.read((read) => read.db.patient.findFirstOrThrow({ where }));
    return readPatient(bay.at(now), { patientId: id });
  };

  it("is told alike by the month, its statistics and cautions, and the patient's page", async () => {
    const bay = await lostMove();
    // The censuses at midnight of 4 to 15 March.
    expect(await gapsOf(bay)).toEqual([["absence-at-census", null, 12, true]]);
    const cautions = cautionsOf(await loadMonth(bay.at(now), { days }));
    expect(cautions.filter((caution) => caution.includes("patient-days"))).toEqual([
      "Data quality: 12 patient-days may be missing: a patient was on no unit at the census, and no reason is recorded.",
    ]);
    const { uncounted, stays } = await patientOf(bay);
    expect(uncounted).toEqual([
      {
        ...{ stayId: stays[0]?.stayId, kind: "no-ward", firstDay: "2024-03-04", lastDay: "2024-03-15", days: 12 },
        ...{ lastWardId: null, nextWardId: null },
      },
    ]);
    // No ward can be told, so whoever sees one ward alone is told nothing.
    expect(await gapsOf(bay, [bay.a])).toEqual([]);
  });

  it("belongs to the ward that follows, and is gone when the missing move is recorded", async () => {
    const bay = await lostMove();
    const act = bay.at(now);
    await importFiles(act, { "moves.csv": [header, "S1,P1,B,2024-03-13T10:00,2024-03-15T09:00,"] });
    expect(await gapsOf(bay)).toEqual([["absence-at-census", bay.b, 10, true]]);
    const { report } = await shared.store.read((read) => readFigures(read, act, { month: march }));
    const figure = (code: string) =>
      report.wards.find((ward) => ward.code === code)?.figures.find(({ key }) => key === "absences_unknown")?.value;
    expect([figure("A"), figure("B")]).toEqual([0, 10]);
    // Each day opens to its patient, for people of the unit that it may belong to alone; the view is recorded.
    const { days } = await readUncountedDays(act, { month: march, wardIds: [bay.b] });
    expect(days).toHaveLength(10);
    expect(days[0]).toMatchObject({ kind: "no-ward", wardId: bay.b, identifier: "P1" });
    expect(new Set(days.map(({ day }) => day)).size).toBe(10);
    expect((await readUncountedDays(act, { month: march, wardIds: [bay.a] })).days).toEqual([]);
    const viewed = (await auditOf(shared.store, bay.facilityId, act.now)).filter(
      ({ action }) => action === "view-uncounted-days",
    );
    expect(viewed).toHaveLength(2);
    await importFiles(act, { "moves.csv": [header, "S1,P1,A,2024-03-03T12:00,2024-03-13T10:00,"] });
    expect(await gapsOf(bay)).toEqual([]);
    expect((await patientOf(bay)).uncounted).toEqual([]);
  });

  it("in an outpatient area between two wards waits until the area is confirmed", async () => {
    const bay = await lostMove();
    const act = bay.at(now);
    const moves = [
      "S2,P2,A,2024-03-05T10:00,2024-03-06T10:00,",
      "S2,P2,ED,2024-03-06T10:00,2024-03-08T10:00,",
      "S2,P2,A,2024-03-08T10:00,2024-03-10T10:00,",
    ];
    await importFiles(act, { "moves.csv": [header, ...moves] });
    expect(await gapsOf(bay, [bay.a])).toEqual([["outpatient-at-census", bay.a, 2, true]]);
    const where = { wardId: bay.a, stay: { number: "S2" } };
    const left = await shared.store.read((read) =>
      read.db.wardStay.findFirstOrThrow({ where, orderBy: { startAt: "asc" } }),
    );
    const changes = { absenceAfter: "outpatient" } as const;
    await correctWardStay(act, { wardStayId: left.id, changes, reason: "Observed there, bed given away" });
    expect(await gapsOf(bay, [bay.a])).toEqual([]);
  });

  it("is found with the stays and rules at hand as it is in the month", async () => {
    const bay = await lostMove();
    await shared.store.read(async (read) => {
      const rules = await loadCountingRules(read, bay.facilityId, () => days);
      expect(uncountedDays({ rules, wards: rules.wards, stays: [] }, bay.at(now).now)).toEqual([]);
      expect(await uncountedOfStays(read, bay.at(now), [])).toEqual([]);
    });
  });
});
