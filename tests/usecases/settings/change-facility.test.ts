import { expect, it } from "vitest";
import type { CensusTime, Day } from "../../../shared/day.ts";
import { facility } from "../../../src/store/facilities.ts";
import { dischargePatient } from "../../../src/usecases/record/discharge-patient.ts";
import { voidStay } from "../../../src/usecases/record/void-entry.ts";
import { changeFacility } from "../../../src/usecases/settings/change-facility.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf, ledgerOf, versionsOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";
import { textOf } from "../../reference/day-text.ts";

const now = "2024-03-15 10:00";
const census = (fromDay: string, time: string) => ({ census: { fromDay: fromDay as Day, time: time as CensusTime } });

onEachDatabase("changing a facility", (fresh) => {
  const shared = sharedStore(fresh);
  const read = (bay: AlderBay) => shared.store.read((r) => facility(r, bay.facilityId));
  const timesOf = async (bay: AlderBay) => (await read(bay)).census.map((c) => `${textOf(c.fromDay)} ${c.time}`);
  const refused = (bay: AlderBay, input: Parameters<typeof changeFacility>[1], at = now) =>
    refusalOf(shared.store, () => changeFacility(bay.at(at), input));

  it("of its name keeps the old one, and leaves an audit entry", async () => {
    const bay = await alderBay(shared.store);
    const act = bay.at(now);
    await changeFacility(act, { name: " Alder Bay Medical Center ", reason: "renamed" });
    expect((await read(bay)).name).toBe("Alder Bay Medical Center");
    expect(await versionsOf(shared.store, "facility", bay.facilityId)).toMatchObject([
      { body: { name: "Alder Bay Hospital", zone: "UTC" }, replacedAt: act.now, reason: "renamed" },
    ]);
    expect(await auditOf(shared.store, bay.facilityId, act.now)).toMatchObject([
      { personId: bay.personId, action: "change-facility", patientIds: [], details: { reason: "renamed" } },
    ]);
    await changeFacility(bay.at("2024-03-15 11:00"), { name: "Alder Bay" });
    expect(await versionsOf(shared.store, "facility", bay.facilityId)).toHaveLength(2);
  });

  it("that says what is said already changes nothing but leaves its audit entry", async () => {
    const bay = await alderBay(shared.store);
    await changeFacility(bay.at(now), { name: "Alder Bay Hospital", zone: "UTC" });
    expect(await versionsOf(shared.store, "facility", bay.facilityId)).toEqual([]);
    expect(await auditOf(shared.store, bay.facilityId, utc(now))).toHaveLength(1);
  });

  it("may set the zone and any census day before the first stay", async () => {
    const bay = await alderBay(shared.store);
    await changeFacility(bay.at(now), { zone: "America/Denver", ...census("2024-02-13", "07:00") });
    await changeFacility(bay.at(now), census("1970-01-01", "12:00"));
    expect((await read(bay)).zone).toBe("America/Denver");
    expect(await timesOf(bay)).toEqual(["1970-01-01 12:00", "2024-02-13 07:00"]);
  });

  it("may not set the zone after the first stay, even when that was voided", async () => {
    const bay = await alderBay(shared.store);
    const { stayId } = await bay.admit("P1", "2024-03-01 10:00");
    await voidStay(bay.at("2024-03-01 11:00"), { stayId, reason: "wrong" });
    expect(await refused(bay, { zone: "America/Denver" })).toEqual({ code: "zone-fixed", pointer: "/zone" });
    await changeFacility(bay.at(now), { zone: "UTC" });
  });

  it("may set the census after the first stay from the first day of a month that has not begun, and no other", async () => {
    const bay = await alderBay(shared.store);
    await bay.admit("P1", "2024-03-01 10:00");
    const early = { code: "census-change-too-early", pointer: "/fromDay" };
    for (const day of ["1970-01-01", "2024-03-01", "2024-03-15", "2024-03-16", "2024-04-02", "2024-04-30"])
      expect(await refused(bay, census(day, "12:00"))).toEqual(early);
    await changeFacility(bay.at(now), census("2024-04-01", "12:00"));
    await changeFacility(bay.at("2024-03-31 23:59"), census("2024-05-01", "24:00"));
    expect(await refused(bay, census("2024-04-01", "07:00"), "2024-04-01 00:00")).toEqual(early);
    expect(await timesOf(bay)).toEqual(["1970-01-01 00:00", "2024-04-01 12:00", "2024-05-01 24:00"]);
  });

  it("decides by the day in the facility's own zone whether a month has begun", async () => {
    const bay = await alderBay(shared.store);
    await changeFacility(bay.at("2024-01-02 00:00"), { zone: "America/New_York" });
    await bay.admit("P1", "2024-03-01 10:00");
    // 03:59 UTC is 23:59 of the day before in New York, whose clocks are four hours behind in April.
    await changeFacility(bay.at("2024-04-01 03:59"), census("2024-04-01", "12:00"));
    expect(await refused(bay, census("2024-04-01", "07:00"), "2024-04-01 04:00")).toMatchObject({
      code: "census-change-too-early",
    });
  });

  it("of a census time that has not begun replaces it and keeps the old one", async () => {
    const bay = await alderBay(shared.store);
    await bay.admit("P1", "2024-03-01 10:00");
    await changeFacility(bay.at(now), census("2024-04-01", "12:00"));
    await changeFacility(bay.at("2024-03-16 10:00"), { ...census("2024-04-01", "07:00"), reason: "mistyped" });
    expect(await timesOf(bay)).toEqual(["1970-01-01 00:00", "2024-04-01 07:00"]);
    const id = (await read(bay)).census.at(-1)?.id ?? 0;
    expect(await versionsOf(shared.store, "facility-census", id)).toMatchObject([
      { version: 1, body: { time: "12:00" }, reason: "mistyped" },
    ]);
  });

  it("of the census counts the days from then on at the new time", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await bay.admit("P1", "2024-03-30 10:00");
    await changeFacility(bay.at("2024-03-30 11:00"), census("2024-04-01", "12:00"));
    await dischargePatient(bay.at("2024-04-02 11:00"), { stayId, dischargedAt: utc("2024-04-02 11:00") });
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-31 A", "2024-04-01 A"]);
  });

  it("is refused without a name, with an unknown zone, and with a census time that is none", async () => {
    const bay = await alderBay(shared.store);
    expect(await refused(bay, { name: " " })).toEqual({ code: "field-missing", pointer: "/name" });
    expect(await refused(bay, { zone: "Mars/Olympus" })).toMatchObject({ code: "zone-unknown" });
    expect(await refused(bay, census("2024-04-01", "7:00"))).toEqual({
      code: "census-time-unreadable",
      pointer: "/time",
    });
  });
});
