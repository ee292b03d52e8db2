import { afterAll, beforeAll, expect, it } from "vitest";
import { endpoints } from "../../shared/api/index.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { ledgerOf } from "../databases/read-back.ts";
import { type Desk, openDesk } from "./desk.ts";

const reason = "Written down on the wrong line";
const { admitPatient, cancelMove, correctWardStay, movePatient, readPatient, recordAbsence, voidWardStay } = endpoints;

onEachDatabase("moves", (fresh) => {
  let desk: Desk;
  let east: number;
  let north: number;
  beforeAll(async () => {
    desk = await openDesk(await fresh());
    ({ "3E": east, "4N": north } = desk.hospital.wards);
  });
  afterAll(() => desk?.close());

  const admit = (name: string) => {
    const input = { wardId: east, identifier: name, number: name, admittedAt: "2026-11-16T08:00", bed: "7" };
    return desk.ask(admitPatient, input);
  };
  const moved = async (name: string) => {
    const first = await admit(name);
    const { stayId } = first;
    const move = { stayId, movedAt: "2026-11-18T09:00", toWardId: north, bed: "12" };
    return { ...first, to: (await desk.ask(movePatient, move)).wardStayId };
  };
  const wardStaysOf = async (patientId: number) =>
    (await desk.ask(readPatient, { patientId })).wardStays.filter(({ voidReason }) => voidReason === null);
  const ledger = (patientId: number) => ledgerOf(desk.hospital.store, patientId);

  it("go to any ward of the facility, and the one that was left keeps its days", async () => {
    const { patientId, stayId, wardStayId } = await admit("MOVE");
    const move = { stayId, movedAt: "2026-11-18T09:00", toWardId: north, bed: "12" };
    expect(await desk.tag(movePatient, move, { person: "bedside", key: "move" })).toBe('"1"');
    const arrived = await desk.ask(movePatient, move, { person: "bedside", key: "move" });
    const at = Date.UTC(2026, 10, 18, 14);
    expect(await wardStaysOf(patientId)).toEqual([
      expect.objectContaining({ wardStayId, wardId: east, endAt: at, version: 2 }),
      expect.objectContaining({ wardStayId: arrived.wardStayId, wardId: north, bed: "12", startAt: at, endAt: null }),
    ]);
    // The ledger holds what is closed: the ward that was left.
    expect(await ledger(patientId)).toEqual(["2026-11-17 3E", "2026-11-18 3E"]);
  });

  it("are refused to wards that are not there, before the admission and after the discharge", async () => {
    const { stayId } = await admit("REFUSED");
    const refused = async (movedAt: string, toWardId: number) => {
      const { status, code, errors } = await desk.refused(movePatient, { stayId, movedAt, toWardId });
      return [status, code, errors[0]?.pointer];
    };
    const elsewhere = desk.hospital.elsewhereWardId;
    expect(await refused("2026-11-18T09:00", elsewhere)).toEqual([404, "not-found", "/toWardId"]);
    expect(await refused("2026-11-18T09:00", 2_000_000_000)).toEqual([404, "not-found", "/toWardId"]);
    expect(await refused("2026-11-16T07:59", north)).toEqual([409, "outside-stay", "/movedAt"]);
    expect(await refused("2026-11-20T11:00", north)).toEqual([422, "in-the-future", "/movedAt"]);
    await desk.ask(endpoints.dischargePatient, { stayId, dischargedAt: "2026-11-19T09:00", seenVersion: 1 });
    expect(await refused("2026-11-19T09:00", north)).toEqual([409, "outside-stay", "/movedAt"]);
  });

  it("leave a gap for time off the wards, with a return or without", async () => {
    const { patientId, stayId, wardStayId } = await admit("AWAY");
    const leave = { stayId, leftAt: "2026-11-17T10:00", backAt: "2026-11-18T10:00", kind: "leave" as const };
    const back = await desk.ask(recordAbsence, leave, { person: "bedside" });
    expect(await wardStaysOf(patientId)).toMatchObject([
      { wardStayId, endAt: Date.UTC(2026, 10, 17, 15), absenceAfter: "leave" },
      { wardStayId: back.wardStayId, wardId: east, bed: "7", startAt: Date.UTC(2026, 10, 18, 15), endAt: null },
    ]);
    const open = await desk.ask(recordAbsence, { stayId, leftAt: "2026-11-19T10:00", kind: null });
    expect(open).toEqual({ wardStayId: null });
    expect((await wardStaysOf(patientId)).at(-1)).toMatchObject({
      absenceAfter: null,
      endAt: Date.UTC(2026, 10, 19, 15),
    });
    // No census of 18 and 20 November found the patient on a ward.
    expect(await ledger(patientId)).toEqual(["2026-11-17 3E", "2026-11-19 3E"]);
    const gone = await desk.refused(recordAbsence, { stayId, leftAt: "2026-11-19T12:00", kind: "leave" });
    expect([gone.status, gone.code, gone.errors[0]?.pointer]).toEqual([409, "not-on-a-ward", "/leftAt"]);
    const other = await admit("AWAY-2");
    const turned = { ...leave, stayId: other.stayId, backAt: "2026-11-17T09:00" };
    const wrong = await desk.refused(recordAbsence, turned);
    expect([wrong.code, wrong.errors[0]?.pointer]).toEqual(["end-before-start", "/backAt"]);
    await desk.ask(movePatient, { stayId: other.stayId, movedAt: "2026-11-18T09:00", toWardId: north });
    const late = await desk.refused(recordAbsence, { ...leave, stayId: other.stayId });
    expect([late.status, late.code, late.errors[0]?.pointer]).toEqual([409, "move-overlaps", "/backAt"]);
  });

  it("are corrected: ward, bed and times; what was said before is kept", async () => {
    const { patientId, wardStayId, to } = await moved("CORRECT");
    const change = {
      wardStayId,
      endAt: "2026-11-17T21:00",
      absenceAfter: "leave" as const,
      reason,
      seenVersion: 2,
    };
    expect(await desk.tag(correctWardStay, change, { person: "bedside" })).toBe('"3"');
    expect(await ledger(patientId)).toEqual(["2026-11-17 3E"]);
    const overlap = { wardStayId: to, startAt: "2026-11-17T20:00", reason, seenVersion: 1 };
    const refused = await desk.refused(correctWardStay, overlap);
    expect([refused.status, refused.code]).toEqual([409, "move-overlaps"]);
    await desk.ask(correctWardStay, { wardStayId: to, toWardId: east, bed: null, reason, seenVersion: 1 });
    expect((await wardStaysOf(patientId)).at(-1)).toMatchObject({
      wardStayId: to,
      wardId: east,
      bed: null,
      version: 2,
    });
    const elsewhere = { wardStayId: to, toWardId: desk.hospital.elsewhereWardId, reason, seenVersion: 2 };
    const unknown = await desk.refused(correctWardStay, elsewhere);
    expect([unknown.status, unknown.errors[0]?.pointer]).toEqual([404, "/toWardId"]);
  });

  it("are taken back: the patient stayed where they were", async () => {
    const { patientId, wardStayId, to } = await moved("CANCEL");
    expect(await desk.tag(cancelMove, { wardStayId: to, reason, seenVersion: 1 }, { person: "bedside" })).toBe('"2"');
    expect(await wardStaysOf(patientId)).toEqual([
      expect.objectContaining({ wardStayId, wardId: east, endAt: null, version: 3 }),
    ]);
    expect(await ledger(patientId)).toEqual([]);
    const first = await desk.refused(cancelMove, { wardStayId, reason, seenVersion: 3 });
    expect([first.status, first.code]).toEqual([409, "first-ward-stay"]);
    const again = await desk.refused(cancelMove, { wardStayId: to, reason, seenVersion: 2 });
    expect([again.status, again.code]).toEqual([409, "entry-voided"]);
  });

  it("are voided: the patient was not there", async () => {
    const { patientId, wardStayId, to } = await moved("VOID");
    expect(await desk.tag(voidWardStay, { wardStayId: to, reason, seenVersion: 1 })).toBe('"2"');
    expect(await wardStaysOf(patientId)).toEqual([
      expect.objectContaining({ wardStayId, endAt: Date.UTC(2026, 10, 18, 14) }),
    ]);
    const only = await desk.refused(voidWardStay, { wardStayId, reason, seenVersion: 2 });
    expect([only.status, only.code]).toEqual([409, "first-ward-stay"]);
  });

  it.each([
    ["correctWardStay", { bed: "9", reason }],
    ["cancelMove", { reason }],
    ["voidWardStay", { reason }],
  ] as const)("%s wants the version that was seen, and shows the ward stay as it is by now", async (name, more) => {
    const { to } = await moved(`STALE-${name}`);
    await desk.ask(correctWardStay, { wardStayId: to, bed: "8", reason, seenVersion: 1 });
    const input = { wardStayId: to, ...more, seenVersion: 1 } as never;
    const stale = await desk.refused(endpoints[name], input);
    expect([stale.status, stale.code]).toEqual([412, "stale-version"]);
    const startAt = "2026-11-18T14:00:00.000Z";
    expect(stale.current).toMatchObject({ wardStayId: to, wardId: north, bed: "8", version: 2, startAt, endAt: null });
    const missing = await desk.refused(endpoints[name], input, { headers: { "if-match": "" } });
    expect([missing.status, missing.code]).toEqual([428, "version-missing"]);
  });
});
