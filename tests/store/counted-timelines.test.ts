import { expect, it } from "vitest";
import { absenceKinds, catheterKinds } from "../../shared/vocabulary.ts";
import { countedTimelines } from "../../src/store/counted-timelines.ts";
import { ensurePatient } from "../../src/store/patients.ts";
import { saveTimelines } from "../../src/store/save-timelines.ts";
import { mergePatients } from "../../src/usecases/record/merge-patients.ts";
import { recordAbsence } from "../../src/usecases/record/record-absence.ts";
import { voidCatheter, voidStay } from "../../src/usecases/record/void-entry.ts";
import { alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { fullStay, timelineOf } from "../databases/full-timeline.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { inserted } from "../databases/urethral.ts";
import { utc } from "../databases/utc.ts";

const later = "2024-03-20 10:00";

onEachDatabase("what counting asks of patients", (fresh) => {
  const shared = sharedStore(fresh);
  const counted = (...ids: number[]) => shared.store.read((read) => countedTimelines(read, ids));

  it("is every field that counting uses, to the millisecond, with nothing where nothing is known", async () => {
    const bay = await alderBay(shared.store);
    const stay = await shared.store.tx(async (tx) => {
      const person = { id: tx.newId(), identifier: "P1", birthDay: null, sex: null };
      const patientId = await ensurePatient(tx, bay.by(later), person);
      const made = fullStay({ patientId, a: bay.a, b: bay.b, newId: () => tx.newId() });
      const change = { before: timelineOf(patientId), after: timelineOf(patientId, made) };
      await saveTimelines(tx, bay.by(later), [change]);
      return made;
    });
    const [timeline] = await counted(stay.patientId);
    const inOrder = timeline?.stays.map((found) => ({
      ...found,
      wardStays: found.wardStays.toSorted((x, y) => x.id - y.id),
      catheters: found.catheters.toSorted((x, y) => (x.kind < y.kind ? -1 : 1)),
    }));
    expect({ ...timeline, stays: inOrder }).toEqual({
      patientId: stay.patientId,
      stays: [
        {
          id: stay.id,
          voidReason: null,
          admittedAt: stay.admittedAt,
          dischargedAt: stay.dischargedAt,
          wardStays: stay.wardStays.map(({ id, wardId, startAt, endAt, absenceAfter }) => ({
            id,
            wardId,
            startAt,
            endAt,
            absenceAfter,
            voidReason: null,
          })),
          catheters: stay.catheters.map(({ kind, insertedAt, removedAt, removedAfterAt }) => ({
            kind,
            insertedAt,
            removedAt,
            removedAfterAt,
            voidReason: null,
          })),
        },
      ],
    });
  });

  it("tells every kind of absence and catheter apart", async () => {
    const bay = await alderBay(shared.store);
    const { patientId, stayId } = await bay.stay("P1", "2024-03-01 10:00", "2024-03-09 10:00");
    const absences = [...Object.keys(absenceKinds), null] as (keyof typeof absenceKinds | null)[];
    for (const [i, kind] of absences.entries()) {
      const [leftAt, backAt] = [utc(`2024-03-0${i + 2} 10:00`), utc(`2024-03-0${i + 2} 11:00`)];
      await recordAbsence(bay.at(later), { stayId, leftAt, kind, backAt });
    }
    const kinds = Object.keys(catheterKinds) as (keyof typeof catheterKinds)[];
    for (const kind of kinds) await inserted(bay, later, stayId, "2024-03-02 10:00", { kind });
    const [timeline] = await counted(patientId);
    const [stay] = timeline?.stays ?? [];
    const inOrder = stay?.wardStays.toSorted((x, y) => x.startAt - y.startAt).map((w) => w.absenceAfter);
    expect(inOrder).toEqual([...absences, null]);
    expect(stay?.catheters.map((c) => c.kind).toSorted()).toEqual(kinds.toSorted());
  });

  it("leaves out what was voided, and holds stays of merged patients in the order of ids", async () => {
    const bay = await alderBay(shared.store);
    const one = await bay.stay("P1", "2024-03-01 10:00", "2024-03-02 10:00");
    const two = await bay.stay("P2", "2024-03-03 10:00", "2024-03-04 10:00");
    const gone = await bay.stay("P2", "2024-03-05 10:00", "2024-03-06 10:00");
    const catheterId = await inserted(bay, later, one.stayId, "2024-03-01 11:00");
    await voidCatheter(bay.at(later), { catheterId, reason: "wrong" });
    await voidStay(bay.at(later), { stayId: gone.stayId, reason: "wrong" });
    await mergePatients(bay.at(later), { fromId: one.patientId, intoId: two.patientId });
    const timelines = await counted(two.patientId, one.patientId, -1);
    expect(timelines.map((t) => [t.patientId, t.stays.map((s) => [s.id, s.catheters.length])])).toEqual([
      [
        two.patientId,
        [
          [one.stayId, 0],
          [two.stayId, 0],
        ],
      ],
      [one.patientId, []],
      [-1, []],
    ]);
    expect(await counted()).toEqual([]);
  });
});
