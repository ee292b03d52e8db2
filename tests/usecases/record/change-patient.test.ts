import { expect, it } from "vitest";
import { revise, withStay } from "../../../src/domain/timeline/timeline.ts";
import { verifyLedger } from "../../../src/usecases/jobs/check-ledger.ts";
import { changePatient, changePatientIn, type PatientChange } from "../../../src/usecases/record/change-patient.ts";
import { movePatient } from "../../../src/usecases/record/move-patient.ts";
import { recordAbsence } from "../../../src/usecases/record/record-absence.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { firstOf } from "../../databases/first-of.ts";
import { auditOf, everything, versionsOf } from "../../databases/read-back.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";

const later = "2024-03-10 10:00";

onEachDatabase("changing a patient's record", (fresh) => {
  const shared = sharedStore(fresh);

  /** A change of the first stay's disposition. */
  function disposition(key: PatientChange<unknown>["key"], said: string): PatientChange<{ said: string }> {
    return {
      action: "correct-stay",
      key,
      details: { extra: 1 },
      reason: "asked",
      decide: (timeline) => ({
        timeline: withStay(timeline, revise(firstOf(timeline.stays), { disposition: said })),
        answer: { said },
      }),
    };
  }

  it("stores the decision, counts the patient's version up and leaves one audit entry, with answer and reason", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00");
    const act = bay.at(later);
    const versionOf = async () =>
      (await shared.store.read((read) => read.db.patient.findUniqueOrThrow({ where: { id: patientId } }))).version;
    const before = await versionOf();
    expect(await changePatient(act, disposition({ stayId }, "home"))).toEqual({ said: "home" });
    expect(await versionOf()).toBe(before + 1);
    expect((await versionsOf(shared.store, "stay", stayId)).at(-1)).toMatchObject({ version: 2, reason: "asked" });
    expect(await auditOf(shared.store, bay.facilityId, act.now)).toEqual([
      {
        at: act.now,
        personId: bay.personId,
        action: "correct-stay",
        patientIds: [patientId],
        details: { extra: 1, said: "home", reason: "asked" },
      },
    ]);
  });

  it("decides on what is recorded once the patient is taken: each of many decisions sees the one before", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00");
    const addOne = () =>
      changePatient(bay.at(later), {
        action: "correct-stay",
        key: { patientId },
        details: {},
        decide: (timeline) => {
          const stay = firstOf(timeline.stays);
          const next = `${Number(stay.disposition ?? 0) + 1}`;
          return { timeline: withStay(timeline, revise(stay, { disposition: next })), answer: { next } };
        },
      });
    const answers = await Promise.all(Array.from({ length: 8 }, addOne));
    expect(answers.map((a) => Number(a.next)).toSorted((a, b) => a - b)).toEqual([1, 2, 3, 4, 5, 6, 7, 8]);
    const row = await shared.store.read((read) => read.db.stay.findUniqueOrThrow({ where: { id: stayId } }));
    expect(row).toMatchObject({ disposition: "8", version: 10 });
  });

  it("asks the database first, and leaves nothing when that or the decision fails", async () => {
    const bay = await alderBay(shared.store);
    const { stayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00");
    const before = await everything(shared.store);
    const asked: string[] = [];
    const first = async () => {
      asked.push("first");
    };
    const broken = (what: string) => () => {
      asked.push(what);
      throw new Error(what);
    };
    const change = disposition({ stayId }, "home");
    const failing = [
      { ...change, first, decide: broken("decide") },
      { ...change, first: broken("checks") },
    ];
    for (const one of failing) await expect(changePatient(bay.at(later), one)).rejects.toThrow(/decide|checks/);
    expect(asked).toEqual(["first", "decide", "checks"]);
    expect(await everything(shared.store)).toEqual(before);
  });

  it("may be one step of a transaction that does more, and is undone with it", async () => {
    const bay = await alderBay(shared.store);
    const { stayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00");
    const before = await everything(shared.store);
    const work = shared.store.tx(async (tx) => {
      await changePatientIn(tx, bay.at(later), disposition({ stayId }, "home"));
      throw new Error("the rest fails");
    });
    await expect(work).rejects.toThrow("the rest fails");
    expect(await everything(shared.store)).toEqual(before);
  });

  /** Moves to and fro and absences, all sent at once, late and out of order. */
  function manyChanges(bay: AlderBay, stayId: number): Promise<unknown>[] {
    return Array.from({ length: 12 }, (_, i) => {
      const time = `2024-03-0${1 + (i % 4)} ${12 + i}:00`;
      const moved = { stayId, movedAt: utc(time), wardId: i % 2 === 0 ? bay.b : bay.a };
      const away = { stayId, leftAt: utc(time), kind: "leave", backAt: utc(time) + 3_600_000 } as const;
      return i % 3 === 0 ? recordAbsence(bay.at(later), away) : movePatient(bay.at(later), moved);
    });
  }

  it("by twelve clients at once gives each a result or a named refusal, and leaves the ledger right", async () => {
    const bay = await alderBay(shared.store);
    const { stayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-06 10:00");
    const results = await Promise.allSettled(manyChanges(bay, stayId));
    const refused = results.flatMap((one) => (one.status === "rejected" ? [one.reason.code] : []));
    expect(refused.every((code) => ["not-on-a-ward", "move-overlaps"].includes(code))).toBe(true);
    expect(results.length - refused.length).toBeGreaterThan(6);
    const { rows, differences } = await verifyLedger(bay.at(later));
    expect(differences).toEqual([]);
    expect(rows).toBeGreaterThan(0);
  });
});
