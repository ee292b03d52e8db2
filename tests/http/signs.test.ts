import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { day } from "../../shared/day.ts";
import type { Endpoint, InputOf } from "../../shared/endpoint.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { lookedAt } from "./alder-bay.ts";
import { type Bedside, bedsideOf } from "./bedside.ts";
import { type Desk, openDesk } from "./desk.ts";

const { correctSign, readCultures, recordSigns, voidSign } = endpoints;
const reason = "Read from the wrong line";
const on = (text: string) => day.parse(text);

onEachDatabase("signs", (fresh) => {
  let desk: Desk;
  let bed: Bedside;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    bed = bedsideOf(desk);
  });
  afterAll(() => desk?.close());

  const refused = async <E extends Endpoint>(endpoint: E, input: InputOf<E>) => {
    const { status, errors } = await desk.refused(endpoint, input);
    return [status, ...errors.map(({ code, pointer }) => `${code} ${pointer}`)];
  };
  const signsOf = async (patientId: number) => (await desk.ask(readCultures, { patientId })).signs;
  const today = on("2026-11-18");
  const fever = { sign: "temperature", finding: "present" } as const;

  it("of a day are recorded together, measured values as they were measured", async () => {
    const { patientId } = await bed.admit("DAY");
    const signs = [
      { ...fever, temperature: "101.25 F", time: "21:30" },
      { sign: "dysuria", finding: "absent" },
      { sign: "suprapubic-tenderness", finding: "present", otherCause: true, time: "08:00" },
      { sign: "urgency", finding: "not-recorded" },
    ] as const;
    const { signIds } = await desk.ask(
      recordSigns,
      { patientId, day: today, signs: [...signs] },
      { person: "bedside" },
    );
    expect(signIds).toHaveLength(4);
    const common = {
      ...{ patientId, version: 1, voidReason: null, day: "2026-11-18", at: null, temperature: null, otherCause: false },
      ...{ lastDay: null, readAt: null },
      ...{ writtenAt: lookedAt, writtenBy: desk.hospital.people.bedside },
    };
    const [warm, dysuria, tender, urgency] = signIds;
    // Those without an hour come first.
    expect(await signsOf(patientId)).toEqual([
      { ...common, signId: dysuria, sign: "dysuria", finding: "absent" },
      { ...common, signId: urgency, sign: "urgency", finding: "not-recorded" },
      {
        ...{ ...common, signId: tender, sign: "suprapubic-tenderness", finding: "present", otherCause: true },
        at: Date.UTC(2026, 10, 18, 13),
      },
      { ...common, ...fever, signId: warm, temperature: "101.25 °F", at: Date.UTC(2026, 10, 19, 2, 30) },
    ]);
  });

  it("refuse what a living body cannot have, and ask about what is rare", async () => {
    const { patientId } = await bed.admit("BOUNDS");
    const measured = (...temperatures: string[]) => ({
      ...{ patientId, day: today },
      signs: temperatures.map((temperature) => ({ ...fever, temperature })),
    });
    // 13.0 °C is 55.4 °F and 46.5 °C is 115.7 °F exactly, by the definition of the Fahrenheit scale.
    expect(await refused(recordSigns, measured("98.6", "12.99 C", "46.51 C", "55.39 F", "115.71 °F"))).toEqual([
      ...[422, ...[0, 1, 2, 3, 4].map((i) => `out-of-bounds /signs/${i}/temperature`)],
    ]);
    const rare = measured("42.01", "31.99", "107.61 F", "89.59 F", "115.7 F", "13 C");
    const pointers = rare.signs.map((_, i) => `/signs/${i}/temperature`);
    expect(await refused(recordSigns, rare)).toEqual([422, ...pointers.map((pointer) => `unusual-value ${pointer}`)]);
    const { signIds } = await desk.ask(recordSigns, { ...rare, confirm: pointers });
    const change = { signId: signIds[0] ?? 0, reason, otherCause: true, seenVersion: 1 };
    expect(await refused(correctSign, { ...change, temperature: "42.5" })).toEqual([422, "unusual-value /temperature"]);
    await desk.ask(correctSign, change);
    await desk.ask(correctSign, { ...change, temperature: "42.5", confirm: ["/temperature"], seenVersion: 2 });
    await desk.ask(recordSigns, measured("42", "32.0 °C", "107.6 F", "89.6 F", "38,4"));
    expect(await refused(recordSigns, measured("38.456", "38-39", "warm"))).toEqual([
      ...[422, ...[0, 1, 2].map((i) => `field-unreadable /signs/${i}/temperature`)],
    ]);
  });

  it("lie in the days that can decide, and not in the future", async () => {
    const { patientId } = await bed.admit("WHEN");
    const dysuria = { sign: "dysuria", finding: "present" } as const;
    const at = (text: string, ...times: (string | undefined)[]) => ({
      ...{ patientId, day: on(text) },
      signs: times.map((time) => (time === undefined ? dysuria : { ...dysuria, time })),
    });
    expect(await refused(recordSigns, at("2026-11-13", undefined))).toEqual([409, "outside-surveillance-days /day"]);
    expect(await refused(recordSigns, at("2026-11-21", "08:00"))).toEqual([422, "in-the-future /day"]);
    expect(await refused(recordSigns, at("2026-11-20", "10:05", "10:06"))).toEqual([
      422,
      "in-the-future /signs/1/time",
    ]);
    await desk.ask(recordSigns, at("2026-11-14", undefined));
    await desk.ask(recordSigns, at("2026-11-20", undefined, "10:00"));
    const { errors } = await desk.refused(recordSigns, at("2026-03-08", "02:30"));
    // The clocks went from 02:00 to 03:00 on that day.
    expect(errors.map(({ code }) => code)).toEqual(["outside-surveillance-days", "time-does-not-exist"]);
  });

  it("do not contradict themselves", async () => {
    const { patientId } = await bed.admit("SELF");
    const signs = [
      { sign: "dysuria", finding: "present", temperature: "38.4" },
      { sign: "temperature", finding: "absent", temperature: "38.4" },
      { sign: "vomiting", finding: "absent", otherCause: true },
    ] as const;
    expect(await refused(recordSigns, { patientId, day: today, signs: [...signs] })).toEqual([
      ...[422, "sign-contradicts /signs/0/temperature", "sign-contradicts /signs/1/temperature"],
      "sign-contradicts /signs/2/otherCause",
    ]);
  });

  it("are corrected and voided; what they said is kept", async () => {
    const { patientId } = await bed.admit("CHANGED");
    const measured = { ...fever, temperature: "38.4 C", time: "21:30" };
    const first = await desk.ask(recordSigns, { patientId, day: today, signs: [measured] }, { person: "bedside" });
    const signId = first.signIds[0] ?? 0;
    const change = { signId, reason };
    expect(await desk.tag(correctSign, { ...change, day: on("2026-11-17"), seenVersion: 1 })).toBe('"2"');
    expect(await signsOf(patientId)).toMatchObject([{ day: "2026-11-17", at: Date.UTC(2026, 10, 18, 2, 30) }]);
    const { status, code, current } = await desk.refused(voidSign, { ...change, seenVersion: 1 });
    expect([status, code]).toEqual([412, "stale-version"]);
    expect(current).toMatchObject({ signId, version: 2, day: "2026-11-17", at: "2026-11-18T02:30:00.000Z" });
    await desk.ask(correctSign, { ...change, time: null, temperature: "37.9", seenVersion: 2 });
    expect(await refused(correctSign, { ...change, day: on("2026-11-21"), seenVersion: 3 })).toEqual([
      ...[422, "in-the-future /day"],
    ]);
    expect(await refused(correctSign, { ...change, temperature: "3.79", finding: "absent", seenVersion: 3 })).toEqual([
      ...[422, "sign-contradicts /temperature", "out-of-bounds /temperature"],
    ]);
    await desk.ask(voidSign, { ...change, seenVersion: 3 });
    expect(await refused(correctSign, { ...change, time: "09:00", seenVersion: 4 })).toEqual([409, "entry-voided "]);
    const { signs, corrections } = await desk.ask(readCultures, { patientId });
    expect(signs).toMatchObject([{ signId, version: 4, voidReason: reason, at: null, temperature: "37.9 °C" }]);
    expect(signs[0]).toMatchObject({ writtenBy: desk.hospital.people.bedside });
    const kept = { entry: `sign ${signId}`, replacedBy: desk.hospital.people.prevention, reason };
    const before = { hundredths: 3840, unit: "C" };
    expect(corrections).toMatchObject([
      { ...kept, version: 1, before: { at: "2026-11-19T02:30:00.000Z", temperature: before } },
      { ...kept, version: 2, before: { at: "2026-11-18T02:30:00.000Z", temperature: before } },
      { ...kept, version: 3, before: { at: null, temperature: { hundredths: 3790, unit: "C" } } },
    ]);
  });

  it("of an hour that came twice are the earlier one, and marked", async () => {
    const { patientId } = await desk.ask(endpoints.admitPatient, {
      ...{ wardId: desk.hospital.wards["3E"], identifier: "TWICE", number: "S-TWICE" },
      admittedAt: "2026-10-31T20:00",
    });
    const signs = [{ sign: "dysuria" as const, finding: "present" as const, time: "01:30" }];
    const { signIds } = await desk.ask(recordSigns, { patientId, day: on("2026-11-01"), signs });
    const change = { signId: signIds[0] ?? 0, reason };
    const kept = async () => {
      const where = { id: change.signId };
      const row = await desk.hospital.store.read(({ db }) => db.sign.findUniqueOrThrow({ where }));
      return [row.at?.getTime(), row.marks];
    };
    expect(await kept()).toEqual([Date.UTC(2026, 10, 1, 5, 30), "repeated-hour:at"]);
    await desk.ask(correctSign, { ...change, finding: "absent", seenVersion: 1 });
    expect(await kept()).toEqual([Date.UTC(2026, 10, 1, 5, 30), "repeated-hour:at"]);
    await desk.ask(correctSign, { ...change, time: "03:30", seenVersion: 2 });
    expect(await kept()).toEqual([Date.UTC(2026, 10, 1, 8, 30), ""]);
  });
});
