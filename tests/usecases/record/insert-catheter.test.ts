import { expect, it } from "vitest";
import { type InsertCatheter, insertCatheter } from "../../../src/usecases/record/insert-catheter.ts";
import { alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { auditOf, ledgerOf } from "../../databases/read-back.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { urethral } from "../../databases/urethral.ts";
import { utc } from "../../databases/utc.ts";

onEachDatabase("inserting a catheter", (fresh) => {
  const shared = sharedStore(fresh);

  it("makes catheter-days of the days on which it was in at the census, until the discharge", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-05 10:00");
    const act = bay.at("2024-03-06 10:00");
    const { catheterId } = await insertCatheter(act, urethral(stayId, "2024-03-03 00:00:00.001"));
    expect(await ledgerOf(shared.store, patientId)).toEqual([
      "2024-03-02 A",
      "2024-03-03 A",
      "2024-03-04 A with catheter",
      "2024-03-05 A with catheter",
    ]);
    expect(await auditOf(shared.store, bay.facilityId, act.now)).toEqual([
      {
        at: act.now,
        personId: bay.personId,
        action: "insert-catheter",
        patientIds: [patientId],
        details: { stayId, catheterId },
      },
    ]);
  });

  it("counts a day once, whatever number of catheters", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-03 10:00");
    for (const time of ["2024-03-01 11:00", "2024-03-01 12:00"])
      await insertCatheter(bay.at("2024-03-06 10:00"), urethral(stayId, time));
    expect(await ledgerOf(shared.store, patientId)).toEqual([
      "2024-03-02 A with catheter",
      "2024-03-03 A with catheter",
    ]);
  });

  // CDC Patient Safety Component Manual, chapter 7: other devices are no indwelling urethral catheters. From memory.
  it.each(["suprapubic", "external", "intermittent", "nephrostomy", "ileal-conduit"] as const)(
    "records one of the kind %s and counts no catheter-day of it",
    async (kind) => {
      const bay = await alderBay(shared.store);
      const { patientId, stayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00");
      const { catheterId } = await insertCatheter(
        bay.at("2024-03-06 10:00"),
        urethral(stayId, "2024-03-01 11:00", { kind }),
      );
      expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-02 A"]);
      const row = await shared.store.read((read) => read.db.catheter.findUnique({ where: { id: catheterId } }));
      expect(row).toMatchObject({ kind, stayId });
    },
  );

  it("found in place on arrival counts from the first day, though nobody knows when it was put in", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00");
    const found = urethral(stayId, "2024-03-01 11:00", { insertedAt: null, inPlaceOnArrival: true });
    await insertCatheter(bay.at("2024-03-06 10:00"), found);
    expect(await ledgerOf(shared.store, patientId)).toEqual(["2024-03-02 A with catheter"]);
  });

  it("is refused where it contradicts itself or its stay", async () => {
    const bay = await alderBay(shared.store);
    const { stayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-05 10:00");
    const outside = { code: "outside-stay", other: `stay ${stayId}` };
    const cases: [string, Partial<InsertCatheter>, object][] = [
      ["2024-03-01 09:59", {}, { ...outside, pointer: "/insertedAt" }],
      ["2024-03-05 10:00", {}, { ...outside, pointer: "/insertedAt" }],
      ["2024-03-02 10:00", { insertedAt: null }, { code: "insertion-unknown", pointer: "/insertedAt" }],
      ["2024-03-02 10:00", { removedAt: utc("2024-03-02 09:00") }, { code: "removal-before-insertion" }],
      ["2024-03-02 10:00", { lastSeenAt: utc("2024-03-02 09:00") }, { code: "seen-before-insertion" }],
      [
        "2024-03-02 10:00",
        { removedAt: utc("2024-03-02 11:00"), lastSeenAt: utc("2024-03-02 12:00") },
        { code: "seen-after-removal", pointer: "/lastSeenAt" },
      ],
    ];
    for (const [time, more, fault] of cases)
      expect(
        await refusalOf(shared.store, () => insertCatheter(bay.at("2024-03-06 10:00"), urethral(stayId, time, more))),
      ).toMatchObject(fault);
  });

  it("is refused in the future, by every time that is given, and from elsewhere", async () => {
    const bay = await alderBay(shared.store);
    const other = await alderBay(shared.store);
    const { stayId } = await bay.admit("P1", "2024-03-01 10:00");
    const ahead = utc("2024-03-02 10:05:00.001");
    const act = bay.at("2024-03-02 10:00");
    for (const field of ["insertedAt", "removedAt", "lastSeenAt", "removedBeforeAt", "removedAfterAt"]) {
      const input = urethral(stayId, "2024-03-02 09:00", { [field]: ahead });
      expect(await refusalOf(shared.store, () => insertCatheter(act, input))).toEqual({
        code: "in-the-future",
        pointer: `/${field}`,
      });
    }
    const input = urethral(stayId, "2024-03-02 09:00");
    expect(await refusalOf(shared.store, () => insertCatheter(other.at("2024-03-02 10:00"), input))).toMatchObject({
      code: "not-found",
    });
  });
});
