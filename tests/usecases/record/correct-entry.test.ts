import { expect, it } from "vitest";
import { correctCatheter, correctStay, correctWardStay } from "../../../src/usecases/record/correct-entry.ts";
import { movePatient } from "../../../src/usecases/record/move-patient.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf, ledgerOf, versionsOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { inserted } from "../../databases/urethral.ts";
import { utc } from "../../databases/utc.ts";

const reason = "misread";
const later = "2024-03-06 10:00";

onEachDatabase("correcting an entry", (fresh) => {
  const shared = sharedStore(fresh);
  const whole = (bay: AlderBay) => bay.stay("P1", "2024-03-01 10:00", "2024-03-04 10:00", { number: "N1" });

  it("of a ward stay counts the days anew, keeps the old version and names the fields, not the values", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, wardStayId } = await whole(bay);
    const act = bay.at(later);
    await correctWardStay(act, { wardStayId, changes: { wardId: bay.b, bed: "7" }, reason, seenVersion: 2 });
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-02 B", "2024-03-03 B", "2024-03-04 B"]);
    const kept = await versionsOf(shared.store, "ward-stay", wardStayId);
    expect(kept.at(-1)).toMatchObject({
      version: 2,
      body: { wardId: bay.a, bed: null },
      replacedAt: act.now,
      replacedBy: bay.personId,
      reason,
    });
    expect(await auditOf(shared.store, bay.facilityId, act.now)).toEqual([
      {
        at: act.now,
        personId: bay.personId,
        action: "correct-ward-stay",
        patientIds: [patientId],
        details: { fields: ["wardId", "bed"], wardStayId, version: 3, reason },
      },
    ]);
  });

  it("of a stay moves its end together with that of the ward stay, or refuses the contradiction", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId, wardStayId } = await whole(bay);
    const act = bay.at(later);
    const sooner = { dischargedAt: utc("2024-03-03 10:00") };
    const fault = { code: "outside-stay", pointer: "/endAt", other: `stay ${stayId}` };
    expect(await refusalOf(shared.store, () => correctStay(act, { stayId, changes: sooner, reason }))).toEqual(fault);
    await correctWardStay(act, { wardStayId, changes: { endAt: sooner.dischargedAt }, reason });
    await correctStay(bay.at("2024-03-06 11:00"), { stayId, changes: { ...sooner, number: "N2" }, reason });
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-02 A", "2024-03-03 A"]);
    expect(await auditOf(shared.store, bay.facilityId, utc("2024-03-06 11:00"))).toMatchObject([
      { action: "correct-stay", details: { stayId, fields: ["dischargedAt", "number"], reason } },
    ]);
  });

  it("of an admission tells which catheters came with the patient, and keeps what was said of them", async () => {
    const bay = await alderBay(shared.store);
    const { stayId, patientId } = await whole(bay);
    const arrival = { inPlaceOnArrival: true };
    const catheterId = await inserted(bay, later, stayId, "2024-03-01 09:00", arrival);
    const contradicted = () => inserted(bay, later, stayId, "2024-03-01 10:01", arrival);
    expect(await refusalOf(shared.store, contradicted)).toMatchObject({
      code: "arrival-contradicts",
      pointer: "/insertedAt",
      other: `stay ${stayId}`,
    });
    const act = bay.at("2024-03-06 11:00");
    await correctStay(act, { stayId, changes: { admittedAt: utc("2024-03-01 08:00") }, reason });
    const rowOf = () => shared.store.read((read) => read.db.catheter.findUniqueOrThrow({ where: { id: catheterId } }));
    expect((await rowOf()).inPlaceOnArrival).toBe(false);
    expect(await versionsOf(shared.store, "catheter", catheterId)).toMatchObject([
      { version: 1, reason, replacedAt: act.now, body: { inPlaceOnArrival: true } },
    ]);
    await correctStay(act, { stayId, changes: { admittedAt: utc("2024-03-01 09:30") }, reason });
    expect((await rowOf()).inPlaceOnArrival).toBe(true);
    expect((await ledgerOf(shared.store, patientId)).at(-1)).toBe("2024-03-04 A with catheter");
  });

  it("of a catheter counts its days anew", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await whole(bay);
    const catheterId = await inserted(bay, later, stayId, "2024-03-01 11:00");
    const act = bay.at("2024-03-06 11:00");
    await correctCatheter(act, { catheterId, changes: { insertedAt: utc("2024-03-03 11:00") }, reason });
    expect(await ledgerOf(shared.store, patientId)).toEqual([
      "2024-03-02 A",
      "2024-03-03 A",
      "2024-03-04 A with catheter",
    ]);
    await correctCatheter(bay.at("2024-03-06 12:00"), { catheterId, changes: { kind: "external" }, reason });
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-02 A", "2024-03-03 A", "2024-03-04 A"]);
    expect(await auditOf(shared.store, bay.facilityId, act.now)).toMatchObject([
      { action: "correct-catheter", details: { catheterId, fields: ["insertedAt"], reason } },
      { action: "correct-catheter", details: { catheterId, fields: ["kind"], reason } },
    ]);
  });

  it("is refused to who saw an older version, for each kind of entry", async () => {
    const bay = await alderBay(shared.store);
    const { stayId, wardStayId } = await whole(bay);
    const catheterId = await inserted(bay, later, stayId, "2024-03-01 11:00");
    const act = bay.at(later);
    const stale = { reason, seenVersion: 1 };
    const works = [
      () => correctStay(act, { stayId, changes: { disposition: "home" }, ...stale }),
      () => correctWardStay(act, { wardStayId, changes: { bed: "1" }, ...stale }),
      () => correctCatheter(act, { catheterId, changes: { indication: "retention" }, ...stale, seenVersion: 0 }),
    ];
    for (const work of works)
      expect(await refusalOf(shared.store, work)).toEqual({ code: "stale-version", pointer: "" });
    await correctStay(act, { stayId, changes: { disposition: "home" }, reason, seenVersion: 2 });
  });

  it("lets one of two through who saw the same version", async () => {
    const bay = await alderBay(shared.store);
    const { stayId } = await whole(bay);
    const correct = (disposition: string) =>
      correctStay(bay.at(later), { stayId, changes: { disposition }, reason, seenVersion: 2 });
    const both = await Promise.allSettled([correct("home"), correct("died")]);
    const [refused] = both.flatMap((one) => (one.status === "rejected" ? [one.reason] : []));
    expect(refused).toMatchObject({ code: "stale-version" });
    expect(await versionsOf(shared.store, "stay", stayId)).toHaveLength(2);
  });

  it("is refused a number that another stay has; its own it may keep", async () => {
    const bay = await alderBay(shared.store);
    const { stayId } = await whole(bay);
    const other = await bay.admit("P2", "2024-03-01 10:00", { number: "N2" });
    const number = (text: string) => correctStay(bay.at(later), { stayId, changes: { number: text }, reason });
    expect(await refusalOf(shared.store, () => number("N2"))).toEqual({
      code: "stay-number-taken",
      pointer: "/number",
      other: `stay ${other.stayId}`,
    });
    await number("N1");
  });

  it("is refused where it overlaps another move, in the future, to a ward of elsewhere, and from elsewhere", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const { stayId, wardStayId } = await whole(bay);
    const moved = { stayId, movedAt: utc("2024-03-02 12:00"), wardId: bay.b };
    const second = await movePatient(bay.at(later), moved);
    const catheterId = await inserted(bay, later, stayId, "2024-03-01 11:00");
    const [act, elsewhere, ahead] = [bay.at(later), other.at(later), utc("2024-03-06 10:06")];
    const ward = (id: number, changes: Parameters<typeof correctWardStay>[1]["changes"], by = act) =>
      refusalOf(shared.store, () => correctWardStay(by, { wardStayId: id, changes, reason }));
    expect(await ward(second.wardStayId, { startAt: utc("2024-03-02 11:00") })).toEqual({
      code: "move-overlaps",
      pointer: "/startAt",
      other: `ward stay ${wardStayId}`,
    });
    expect(await ward(wardStayId, { endAt: ahead })).toEqual({ code: "in-the-future", pointer: "/endAt" });
    expect(await ward(wardStayId, { wardId: other.a })).toEqual({ code: "not-found", pointer: "/toWardId" });
    expect(await ward(wardStayId, { bed: "1" }, elsewhere)).toMatchObject({ code: "not-found" });
    const others = [
      () => correctStay(elsewhere, { stayId, changes: {}, reason }),
      () => correctCatheter(elsewhere, { catheterId, changes: {}, reason }),
    ];
    for (const work of others) expect(await refusalOf(shared.store, work)).toMatchObject({ code: "not-found" });
    const seen = () => correctCatheter(act, { catheterId, changes: { lastSeenAt: ahead }, reason });
    expect(await refusalOf(shared.store, seen)).toEqual({ code: "in-the-future", pointer: "/lastSeenAt" });
  });
});
