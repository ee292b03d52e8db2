import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { ledgerOf } from "../databases/read-back.ts";
import { type Desk, openDesk } from "./desk.ts";

const reason = "Written down on the wrong line";
const { admitPatient, cancelDischarge, correctStay, dischargePatient, readPatient, voidStay } = endpoints;

onEachDatabase("stays", (fresh) => {
  let desk: Desk;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
  });
  afterAll(() => desk?.close());

  const admission = (name: string, admittedAt = "2026-11-12T08:00") => ({
    ...{ wardId: desk.hospital.wards["3E"], identifier: name, number: `S-${name}`, admittedAt, bed: "7" },
  });
  const admit = (name: string) => desk.ask(admitPatient, admission(name), { person: "bedside" });
  const stayOf = async (patientId: number) => (await desk.ask(readPatient, { patientId })).stays[0];

  it("begin with an admission at the facility's local time, and a known patient is known again", async () => {
    const one = { ...admission("ADMIT"), birthDay: "1950-02-28" as never, sex: "female" as const };
    expect(await desk.tag(admitPatient, one, { person: "bedside", key: "admit" })).toBe('"1"');
    const { patientId, stayId, wardStayId } = await desk.ask(admitPatient, one, { person: "bedside", key: "admit" });
    const record = await desk.ask(readPatient, { patientId });
    expect(record.patient).toEqual({ patientId, identifier: "ADMIT", birthDay: "1950-02-28", sex: "female" });
    // Eastern Standard Time is UTC-5 in November.
    const admittedAt = Date.UTC(2026, 10, 12, 13);
    expect(record.stays).toEqual([
      expect.objectContaining({ stayId, patientId, number: "S-ADMIT", admittedAt, dischargedAt: null, version: 1 }),
    ]);
    expect(record.wardStays).toEqual([
      expect.objectContaining({ wardStayId, stayId, wardId: one.wardId, bed: "7", startAt: admittedAt, endAt: null }),
    ]);
    const other = { ...admission("ADMIT", "2026-11-19T08:00"), number: "S-ADMIT-2" };
    const overlapping = await desk.refused(admitPatient, other);
    expect([overlapping.status, overlapping.code]).toEqual([409, "stay-overlaps"]);
    await desk.ask(dischargePatient, { stayId, dischargedAt: "2026-11-18T09:00", seenVersion: 1 });
    expect((await desk.ask(admitPatient, other)).patientId).toBe(patientId);
  });

  it("have a number of their own, times that exist and are over, and a ward within reach", async () => {
    const { stayId } = await admit("TAKEN");
    const taken = await desk.refused(admitPatient, { ...admission("OTHER"), number: "S-TAKEN" });
    expect(taken).toMatchObject({
      ...{ status: 409, code: "stay-number-taken" },
      errors: [{ pointer: "/number", other: `stay ${stayId}` }],
    });
    expect(JSON.stringify(taken)).not.toContain("TAKEN");
    const second = await admit("SECOND");
    const change = { stayId: second.stayId, number: "S-TAKEN", reason, seenVersion: 1 };
    expect((await desk.refused(correctStay, change)).code).toBe("stay-number-taken");
    const refusedAt = async (admittedAt: string) => {
      const { code, errors } = await desk.refused(admitPatient, admission("TIMES", admittedAt));
      return [code, errors[0]?.pointer];
    };
    // The clocks of the hospital went from 02:00 to 03:00 on 8 March 2026.
    expect(await refusedAt("2026-03-08T02:30")).toEqual(["time-does-not-exist", "/admittedAt"]);
    expect(await refusedAt("2026-11-20T10:06")).toEqual(["in-the-future", "/admittedAt"]);
    expect(await refusedAt("yesterday")).toEqual(["time-unreadable", "/admittedAt"]);
    const hidden = { ...admission("REACH"), wardId: desk.hospital.wards["4N"] };
    expect((await desk.refused(admitPatient, hidden, { person: "bedside" })).status).toBe(404);
  });

  it("end with a discharge, which can be taken back; each is tagged with the version that the next one names", async () => {
    const { stayId, patientId } = await admit("END");
    const end = { stayId, dischargedAt: "2026-11-15T09:00", disposition: "Home", seenVersion: 1 };
    expect(await desk.tag(dischargePatient, end, { person: "bedside" })).toBe('"2"');
    const store = desk.hospital.store;
    expect(await ledgerOf(store, patientId)).toEqual(["2026-11-13 3E", "2026-11-14 3E", "2026-11-15 3E"]);
    const again = await desk.refused(dischargePatient, { ...end, seenVersion: 2 });
    expect([again.status, again.code]).toEqual([409, "already-discharged"]);
    expect(await desk.ask(cancelDischarge, { stayId, reason, seenVersion: 2 })).toEqual({ stayId, version: 3 });
    expect(await stayOf(patientId)).toMatchObject({ dischargedAt: null, disposition: null, version: 3 });
    const none = await desk.refused(cancelDischarge, { stayId, reason, seenVersion: 3 });
    expect([none.status, none.code]).toEqual([409, "not-discharged"]);
    const early = await desk.refused(dischargePatient, {
      stayId,
      dischargedAt: "2026-11-12T07:00",
      seenVersion: 3,
    });
    expect(early.errors[0]).toMatchObject({ code: "end-before-start", pointer: "/dischargedAt" });
  });

  it("are corrected, within what was recorded of them", async () => {
    const { stayId, patientId } = await admit("CORRECT");
    await desk.ask(dischargePatient, { stayId, dischargedAt: "2026-11-15T09:00", seenVersion: 1 });
    const change = { stayId, number: "S-RIGHT", disposition: "Home", dischargedAt: "2026-11-15T11:30" };
    expect(await desk.tag(correctStay, { ...change, reason, seenVersion: 2 })).toBe('"3"');
    expect(await stayOf(patientId)).toMatchObject({
      ...{ number: "S-RIGHT", disposition: "Home", dischargedAt: Date.UTC(2026, 10, 15, 16, 30), version: 3 },
    });
    const shorter = { stayId, dischargedAt: "2026-11-14T09:00", reason, seenVersion: 3 };
    const refused = await desk.refused(correctStay, shorter);
    expect([refused.status, refused.code]).toEqual([409, "outside-stay"]);
    // A discharge on the wrong day is taken back and recorded anew.
    await desk.ask(cancelDischarge, { stayId, reason, seenVersion: 3 });
    const ward = (await desk.ask(readPatient, { patientId })).wardStays[0];
    const end = { wardStayId: ward?.wardStayId ?? 0, endAt: null, reason, seenVersion: ward?.version ?? 0 };
    await desk.ask(endpoints.correctWardStay, end);
    await desk.ask(dischargePatient, { stayId, dischargedAt: "2026-11-14T09:00", seenVersion: 4 });
    expect(await ledgerOf(desk.hospital.store, patientId)).toEqual(["2026-11-13 3E", "2026-11-14 3E"]);
  });

  it("are voided with all that is in them, once", async () => {
    const { stayId, patientId } = await admit("VOID");
    await desk.ask(dischargePatient, { stayId, dischargedAt: "2026-11-15T09:00", seenVersion: 1 });
    expect(await desk.tag(voidStay, { stayId, reason, seenVersion: 2 })).toBe('"3"');
    const record = await desk.ask(readPatient, { patientId });
    expect(record.stays).toEqual([expect.objectContaining({ stayId, voidReason: reason, version: 3 })]);
    expect(record.wardStays.map(({ voidReason }) => voidReason)).toEqual([reason]);
    expect(await ledgerOf(desk.hospital.store, patientId)).toEqual([]);
    const again = await desk.refused(voidStay, { stayId, reason, seenVersion: 3 });
    expect([again.status, again.code]).toEqual([409, "entry-voided"]);
    // Its number is free again.
    await desk.ask(admitPatient, admission("VOID"));
  });

  it.each([
    ["dischargePatient", { dischargedAt: "2026-11-16T09:00" }],
    ["correctStay", { disposition: "Home", reason }],
    ["voidStay", { reason }],
    ["cancelDischarge", { reason }],
  ] as const)("%s wants the version that was seen, and shows the stay as it is by now", async (name, more) => {
    const { stayId, patientId } = await admit(`STALE-${name}`);
    await desk.ask(dischargePatient, { stayId, dischargedAt: "2026-11-15T09:00", seenVersion: 1 });
    const input = { stayId, ...more } as never;
    const stale = await desk.refused(endpoints[name], { ...(input as object), seenVersion: 1 } as never);
    expect([stale.status, stale.code]).toEqual([412, "stale-version"]);
    const current = { dischargedAt: "2026-11-15T14:00:00.000Z", admittedAt: "2026-11-12T13:00:00.000Z" };
    expect(stale.current).toMatchObject({ stayId, patientId, version: 2, number: `S-STALE-${name}`, ...current });
    const missing = await desk.refused(endpoints[name], input, { headers: { "if-match": "" } });
    expect([missing.status, missing.code]).toEqual([428, "version-missing"]);
    const weak = await desk.refused(endpoints[name], input, { headers: { "if-match": 'W/"2"' } });
    expect([weak.status, weak.code]).toEqual([400, "version-unreadable"]);
  });
});
