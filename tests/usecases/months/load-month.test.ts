import { expect, it } from "vitest";
import type { CensusTime, Day } from "../../../shared/day.ts";
import type { MonthFacts } from "../../../src/domain/reports/month-facts.ts";
import { loadMonth } from "../../../src/usecases/months/load-month.ts";
import { admitPatient } from "../../../src/usecases/record/admit-patient.ts";
import { mergePatients } from "../../../src/usecases/record/merge-patients.ts";
import { movePatient } from "../../../src/usecases/record/move-patient.ts";
import { recordAbsence } from "../../../src/usecases/record/record-absence.ts";
import { changeFacility } from "../../../src/usecases/settings/change-facility.ts";
import { describeWard } from "../../../src/usecases/wards/describe-ward.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { inserted } from "../../databases/urethral.ts";
import { utc } from "../../databases/utc.ts";
import { dayOf, textOf } from "../../reference/day-text.ts";

const march = { first: dayOf("2024-03-01"), last: dayOf("2024-03-31") };

/** The figures of each ward: `A 3/1` for three patient-days and one catheter-day. */
function figures(facts: MonthFacts): string[] {
  return facts.wards.map((ward) => `${ward.code} ${ward.patientDays}/${ward.catheterDays}`);
}

onEachDatabase("reading a month", (fresh) => {
  const shared = sharedStore(fresh);
  const read = (bay: AlderBay, now: string, days: { first: number; last: number } | null = march, wardIds?: number[]) =>
    loadMonth(bay.at(now), { days, ...(wardIds ? { wardIds } : {}) });

  /** P1: 2 to 4 March on A, catheter from the 3rd, discharged. P2: from the 30th on B, still there, with a catheter. */
  async function twoPatients(): Promise<AlderBay> {
    const bay = await alderBay(shared.store);
    const one = await bay.stay("P1", "2024-03-01 10:00", "2024-03-04 10:00");
    await inserted(bay, "2024-03-04 11:00", one.stayId, "2024-03-02 10:00");
    const two = await bay.admit("P2", "2024-03-29 10:00", { wardId: bay.b });
    await inserted(bay, "2024-03-29 12:00", two.stayId, "2024-03-29 11:00");
    return bay;
  }

  it("adds what the ledger holds and what patients still there have up to now", async () => {
    const bay = await twoPatients();
    const facts = await read(bay, "2024-03-30 12:00");
    expect(figures(facts)).toEqual(["A 3/2", "B 1/1"]);
    expect(facts.wards[0]?.days.map((d) => [textOf(d.day), d.patientDays, d.catheterDays])).toEqual([
      ["2024-03-02", 1, 0],
      ["2024-03-03", 1, 1],
      ["2024-03-04", 1, 1],
    ]);
    expect(figures(await read(bay, "2024-03-31 00:00"))).toEqual(["A 3/2", "B 2/2"]);
  });

  it("is complete once the last census was taken, and takes no day beyond the month", async () => {
    const bay = await twoPatients();
    const before = await read(bay, "2024-03-30 23:59:59.999");
    expect([before.complete, before.asOf]).toEqual([false, utc("2024-03-30 23:59:59.999")]);
    const after = await read(bay, "2024-04-09 12:00");
    expect([after.complete, figures(after)[1]]).toEqual([true, "B 2/2"]);
    const april = { first: dayOf("2024-04-01"), last: dayOf("2024-04-30") };
    expect(figures(await read(bay, "2024-04-09 12:00", april))).toEqual(["A 0/0", "B 9/9"]);
  });

  it("without days takes all that have anything: of the ledger and of patients still there", async () => {
    const bay = await twoPatients();
    const all = await read(bay, "2024-04-09 12:00", null);
    expect([textOf(all.first), textOf(all.last)]).toEqual(["2024-03-02", "2024-04-09"]);
    expect(figures(all)).toEqual(["A 3/2", "B 11/11"]);
    const empty = await alderBay(shared.store);
    const nothing = await read(empty, "2024-04-09 12:00", null);
    expect([textOf(nothing.first), textOf(nothing.last)]).toEqual(["2024-04-09", "2024-04-09"]);
  });

  it("may be of some wards only, and never shows those of another facility", async () => {
    const bay = await twoPatients();
    const other = await alderBay(shared.store);
    expect(figures(await read(bay, "2024-04-09 12:00", march, [bay.b]))).toEqual(["B 2/2"]);
    expect(figures(await read(bay, "2024-04-09 12:00", march, [other.a]))).toEqual([]);
    expect(figures(await read(other, "2024-04-09 12:00"))).toEqual(["A 0/0", "B 0/0"]);
  });

  it("says what each ward was, and leaves out those that were never for inpatients", async () => {
    const bay = await alderBay(shared.store);
    await bay.addWard("T", "procedure");
    await bay.addWard("U", null);
    const setting = (from: string, what: "inpatient" | "outpatient") =>
      describeWard(bay.at("2024-03-01 08:00"), {
        ...{ wardId: bay.b, name: "Ward B, new", type: null, setting: what, beds: null },
        ...{ fromDay: dayOf(from), reason: "rebuilt" },
      });
    await setting("2024-03-15", "outpatient");
    const facts = await read(bay, "2024-04-09 12:00");
    expect(facts.wards.map((ward) => [ward.code, ward.name, ward.inpatient])).toEqual([
      ["A", "Ward A", "yes"],
      ["B", "Ward B, new", "partly"],
      ["U", "Ward U", "unknown"],
    ]);
    await setting("2024-03-01", "outpatient");
    expect((await read(bay, "2024-04-09 12:00")).wards.map((ward) => ward.code)).toEqual(["A", "U"]);
  });

  it("names the census times that were in force in it", async () => {
    const bay = await twoPatients();
    const change = { census: { fromDay: "2024-04-01" as Day, time: "12:00" as CensusTime } };
    await changeFacility(bay.at("2024-03-30 10:00"), change);
    const spring = await read(bay, "2024-05-01 00:00", { first: dayOf("2024-03-15"), last: dayOf("2024-04-15") });
    expect(spring.census.map((c) => [textOf(c.fromDay), c.time])).toEqual([
      ["2024-03-15", "00:00"],
      ["2024-04-01", "12:00"],
    ]);
    expect(spring).toMatchObject({ facility: { name: "Alder Bay Hospital", zone: "UTC" } });
  });

  it("lists what is doubtful on its wards in its days", async () => {
    const bay = await alderBay(shared.store);
    const { stayId, wardStayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-09 10:00");
    const away = { stayId, leftAt: utc("2024-03-02 12:00"), kind: null, backAt: utc("2024-03-04 12:00") };
    await recordAbsence(bay.at("2024-03-09 11:00"), away);
    const found = (await read(bay, "2024-04-09 12:00")).findings;
    expect(found).toEqual([
      {
        kind: "absence-unknown",
        wardId: bay.a,
        stayId,
        entry: `ward stay ${wardStayId}`,
        start: utc("2024-03-02 12:00"),
        end: utc("2024-03-04 12:00"),
      },
    ]);
    const april = { first: dayOf("2024-04-01"), last: dayOf("2024-04-30") };
    expect((await read(bay, "2024-04-09 12:00", april)).findings).toEqual([]);
    expect((await read(bay, "2024-04-09 12:00", march, [bay.b])).findings).toEqual([]);
  });

  it("counts nothing yet of a patient whom a clock that runs ahead has just let in", async () => {
    const bay = await alderBay(shared.store);
    const act = bay.at("2024-03-09 23:57");
    const patient = { identifier: "P1" };
    const admission = { patient, number: "S1", admittedAt: utc("2024-03-10 00:00"), wardId: bay.a };
    const { stayId } = await admitPatient(act, admission);
    for (const days of [march, null]) expect(figures(await loadMonth(act, { days }))).toEqual(["A 0/0", "B 0/0"]);
    expect(figures(await read(bay, "2024-03-10 00:00"))).toEqual(["A 1/0", "B 0/0"]);
    const moved = { stayId, movedAt: utc("2024-03-10 12:04"), wardId: bay.b };
    await movePatient(bay.at("2024-03-10 12:00"), moved);
    expect(figures(await read(bay, "2024-03-10 12:00"))).toEqual(["A 1/0", "B 0/0"]);
    expect(figures(await read(bay, "2024-03-11 00:00"))).toEqual(["A 1/0", "B 1/0"]);
  });

  it("counts a merged patient still there once, for the survivor", async () => {
    const bay = await twoPatients();
    const three = await bay.stay("P3", "2024-03-10 10:00", "2024-03-11 10:00");
    const two = await shared.store.read((r) =>
      r.db.patient.findFirstOrThrow({ where: { facilityId: bay.facilityId, identifier: "P2" } }),
    );
    const before = figures(await read(bay, "2024-04-09 12:00"));
    await mergePatients(bay.at("2024-04-01 10:00"), { fromId: two.id, intoId: three.patientId });
    expect(figures(await read(bay, "2024-04-09 12:00"))).toEqual(before);
  });

  it("reads one state while patients move and leave: each still counts once on each day", async () => {
    const bay = await alderBay(shared.store);
    const admitted = [];
    for (let i = 0; i < 6; i++) admitted.push(await bay.admit(`P${i}`, "2024-03-01 10:00"));
    const total = (facts: MonthFacts) => facts.wards.reduce((sum, ward) => sum + ward.patientDays, 0);
    let stopped = false;
    const changing = (async () => {
      for (const { stayId } of admitted)
        await movePatient(bay.at("2024-03-11 10:00"), { stayId, movedAt: utc("2024-03-06 10:00"), wardId: bay.b });
      stopped = true;
    })();
    const seen: number[] = [];
    while (!stopped) seen.push(total(await read(bay, "2024-03-11 10:00")));
    await changing;
    expect(seen.length).toBeGreaterThan(0);
    expect(new Set(seen)).toEqual(new Set([60]));
  });
});
