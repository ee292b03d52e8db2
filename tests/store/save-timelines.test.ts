import { expect, it } from "vitest";
import { type PatientTimeline, revise, withEntry, withStay } from "../../src/domain/timeline/timeline.ts";
import { ensurePatient } from "../../src/store/patients.ts";
import { saveTimelines } from "../../src/store/save-timelines.ts";
import { loadTimeline } from "../../src/store/timelines.ts";
import { type AlderBay, alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { firstOf } from "../databases/first-of.ts";
import { fullStay, timelineOf } from "../databases/full-timeline.ts";
import { versionsOf } from "../databases/read-back.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

const first = "2024-04-01 08:00";
const second = "2024-04-02 09:00:00.123";

onEachDatabase("saving what is recorded about a patient", (fresh) => {
  const shared = sharedStore(fresh);
  const load = (patientId: number) => shared.store.read((read) => loadTimeline(read, patientId));

  /** A patient with one stay in which nothing is left out, saved at `first`. */
  async function saved(bay: AlderBay): Promise<PatientTimeline> {
    return shared.store.tx(async (tx) => {
      const by = bay.by(first);
      const person = { id: tx.newId(), identifier: "P1", birthDay: null, sex: null };
      const patientId = await ensurePatient(tx, by, person);
      const after = timelineOf(patientId, fullStay({ patientId, a: bay.a, b: bay.b, newId: () => tx.newId() }));
      await saveTimelines(tx, by, [{ before: timelineOf(patientId), after }]);
      return after;
    });
  }

  function save(bay: AlderBay, before: PatientTimeline, after: PatientTimeline): Promise<void> {
    const by = { ...bay.by(second), reason: "misread" };
    return shared.store.tx((tx) => saveTimelines(tx, by, [{ before, after }]));
  }

  it("keeps every field of every entry", async () => {
    const timeline = await saved(await alderBay(shared.store));
    expect(await load(timeline.patientId)).toEqual(timeline);
  });

  it("writes down who recorded an entry, and when", async () => {
    const bay = await alderBay(shared.store);
    const { stays } = await saved(bay);
    const id = stays[0]?.catheters[0]?.id ?? 0;
    const row = await shared.store.read((read) => read.db.catheter.findUniqueOrThrow({ where: { id } }));
    expect([row.recordedAt.getTime(), row.recordedBy]).toEqual([utc(first), bay.personId]);
  });

  it("replaces what was changed and puts the old version away, whole, with who, when and why", async () => {
    const bay = await alderBay(shared.store);
    const before = await saved(bay);
    const stay = firstOf(before.stays);
    const [wardStay, catheter] = [firstOf(stay.wardStays), firstOf(stay.catheters)];
    const after = withStay(before, {
      ...revise(stay, { disposition: null, dischargedAt: null, number: "N2" }),
      wardStays: withEntry(stay.wardStays, revise(wardStay, { wardId: bay.b, bed: null, absenceAfter: "leave" })),
      catheters: withEntry(stay.catheters, revise(catheter, { removedAt: null, sizeFr: null, marks: [] })),
    });
    await save(bay, before, after);
    expect(await load(before.patientId)).toEqual(after);
    const { wardStays: _wardStays, catheters: _catheters, ...stayAlone } = stay;
    const away = { version: 1, replacedAt: utc(second), replacedBy: bay.personId, reason: "misread" };
    expect(await versionsOf(shared.store, "stay", stay.id)).toEqual([{ ...away, body: stayAlone }]);
    expect(await versionsOf(shared.store, "ward-stay", wardStay.id)).toEqual([{ ...away, body: wardStay }]);
    // What notes say of it stays with the notes.
    const { noted: _, ...said } = catheter;
    expect(await versionsOf(shared.store, "catheter", catheter.id)).toEqual([{ ...away, body: said }]);
  });

  it("keeps every version of an entry that is changed again and again", async () => {
    const bay = await alderBay(shared.store);
    let now = await saved(bay);
    for (const number of ["N1", "N2", "N3"]) {
      const next = withStay(now, revise(firstOf(now.stays), { number }));
      await save(bay, now, next);
      now = next;
    }
    const kept = await versionsOf(shared.store, "stay", now.stays[0]?.id ?? 0);
    expect(kept.map(({ version, body }) => [version, body.number])).toEqual([
      [1, "0012-é'\""],
      [2, "N1"],
      [3, "N2"],
    ]);
    expect(await load(now.patientId)).toEqual(now);
  });

  it("counts one version on for a change of several steps, and none for an entry that is new in it", async () => {
    const bay = await alderBay(shared.store);
    const before = await saved(bay);
    const stay = firstOf(before.stays);
    const twice = revise(revise(stay, { number: "N1" }), { number: "N2" });
    const added = firstOf(fullStay({ patientId: before.patientId, a: bay.a, b: bay.b, newId: () => 0 }).wardStays);
    const id = await shared.store.tx(async (tx) => tx.newId());
    const fresh = revise({ ...added, id }, { bed: "9" });
    await save(bay, before, withStay(before, { ...twice, wardStays: [...stay.wardStays, fresh] }));
    const [stored] = (await load(before.patientId)).stays;
    expect(stored).toMatchObject({ version: 2, number: "N2" });
    expect(stored?.wardStays.find((w) => w.id === id)).toMatchObject({ version: 1, bed: "9" });
    expect(await versionsOf(shared.store, "ward-stay", id)).toEqual([]);
  });

  it("voids without deleting: the entry stays, its number is free, and the version before is kept", async () => {
    const bay = await alderBay(shared.store);
    const before = await saved(bay);
    const stay = firstOf(before.stays);
    const after = withStay(before, revise(stay, { voidReason: "wrong patient" }));
    await save(bay, before, after);
    expect(await load(before.patientId)).toEqual(after);
    const row = await shared.store.read((read) => read.db.stay.findUniqueOrThrow({ where: { id: stay.id } }));
    expect(row).toMatchObject({ voidKey: stay.id, voidReason: "wrong patient", version: 2 });
    expect(await versionsOf(shared.store, "stay", stay.id)).toHaveLength(1);
  });

  it("never takes an entry out that is missing from the new state, and writes nothing when nothing changed", async () => {
    const bay = await alderBay(shared.store);
    const before = await saved(bay);
    const stay = firstOf(before.stays);
    await save(bay, before, timelineOf(before.patientId));
    await save(bay, before, withStay(before, { ...stay, wardStays: [], catheters: [] }));
    await save(bay, before, before);
    expect(await load(before.patientId)).toEqual(before);
    const versions = await shared.store.read((read) => read.db.entryVersion.count({ where: { entryId: stay.id } }));
    expect(versions).toBe(0);
  });

  it("stores all of several changes or none of them", async () => {
    const bay = await alderBay(shared.store);
    const before = await saved(bay);
    const stay = firstOf(before.stays);
    const good = withStay(before, revise(stay, { number: "N9" }));
    const nobody = { ...stay, id: -1, patientId: -5, number: "N10" };
    const work = shared.store.tx((tx) =>
      saveTimelines(tx, bay.by(second), [
        { before, after: good },
        { before: timelineOf(-5), after: timelineOf(-5, nobody) },
      ]),
    );
    await expect(work).rejects.toThrow(/[Ff]oreign key|FOREIGN KEY/);
    expect(await load(before.patientId)).toEqual(before);
  });
});
