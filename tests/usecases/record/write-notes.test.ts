import { expect, it } from "vitest";
import { notesOf } from "../../../src/store/notes.ts";
import { insertCatheter } from "../../../src/usecases/record/insert-catheter.ts";
import { writeNotes } from "../../../src/usecases/record/write-notes.ts";
import { type AlderBay, alderBay } from "../../databases/alder-bay.ts";
import { onEachDatabase } from "../../databases/databases.ts";
import { refusalOf } from "../../databases/refusal.ts";
import { sharedStore } from "../../databases/shared-store.ts";
import { utc } from "../../databases/utc.ts";

const time = "2024-03-02 12:00";

onEachDatabase("the notes of a round", (fresh) => {
  const shared = sharedStore(fresh);

  const catheterOf = async (bay: AlderBay, identifier: string) => {
    const { stayId, patientId } = await bay.admit(identifier, "2024-03-01 08:00");
    const insertedAt = utc("2024-03-01 09:00");
    const said = { stayId, kind: "indwelling-urethral", insertedAt, inPlaceOnArrival: false } as const;
    return { patientId, ...(await insertCatheter(bay.at("2024-03-01 10:00"), said)) };
  };
  const notes = (ids: readonly number[]) => shared.store.read((read) => notesOf(read, ids));

  it("are stored together, with one entry in the audit trail that names every patient", async () => {
    const bay = await alderBay(shared.store);
    const [one, two] = [await catheterOf(bay, "P1"), await catheterOf(bay, "P2")];
    const ids = [one.catheterId, two.catheterId];
    const at = utc("2024-03-02 11:00");
    const { noteIds } = await writeNotes(bay.at(time), [
      { catheterId: one.catheterId, kind: "confirmation", at },
      { catheterId: two.catheterId, kind: "care-check", at, items: { secured: "kept" } },
    ]);
    expect((await notes(ids)).map(({ id, kind, items, writtenAt }) => [id, kind, items, writtenAt])).toEqual([
      [noteIds[0], "confirmation", null, utc(time)],
      [noteIds[1], "care-check", { secured: "kept" }, utc(time)],
    ]);
    const entries = await shared.store.read(({ db }) =>
      db.auditEntry.findMany({
        where: { facilityId: bay.facilityId, action: "write-note" },
        select: { patients: { select: { patientId: true } } },
      }),
    );
    expect(entries.map(({ patients }) => patients.map(({ patientId }) => patientId).sort((a, b) => a - b))).toEqual([
      [one.patientId, two.patientId],
    ]);
  });

  it("are refused together, and nothing of them is stored", async () => {
    const bay = await alderBay(shared.store);
    const { catheterId } = await catheterOf(bay, "P1");
    const well = { catheterId, kind: "confirmation", at: utc("2024-03-02 11:00") } as const;
    const early = { ...well, at: utc("2024-03-01 08:30") };
    const refused = await refusalOf(shared.store, () => writeNotes(bay.at(time), [well, early]));
    expect(refused).toMatchObject({ code: "not-in-place", pointer: "/1/at" });
    const nobody = { ...well, catheterId: -1 };
    expect(await refusalOf(shared.store, () => writeNotes(bay.at(time), [well, nobody]))).toMatchObject({
      code: "not-found",
    });
    const ahead = { ...well, at: utc("2024-03-02 13:00") };
    expect(await refusalOf(shared.store, () => writeNotes(bay.at(time), [ahead]))).toMatchObject({
      code: "in-the-future",
    });
    expect(await notes([catheterId])).toEqual([]);
  });

  it("belong to the facility: a catheter of another one is not there", async () => {
    const [bay, other] = [await alderBay(shared.store), await alderBay(shared.store)];
    const { catheterId } = await catheterOf(other, "P1");
    const note = { catheterId, kind: "confirmation", at: utc("2024-03-02 11:00") } as const;
    expect(await refusalOf(shared.store, () => writeNotes(bay.at(time), [note]))).toMatchObject({ code: "not-found" });
    expect(await notes([catheterId])).toEqual([]);
  });
});
