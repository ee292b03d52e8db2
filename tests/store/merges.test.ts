import { expect, it } from "vitest";
import { addMerge, mergedGroup, setSurvivor, standingMerge, undoMerge } from "../../src/store/merges.ts";
import { type AlderBay, alderBay } from "../databases/alder-bay.ts";
import { onEachDatabase } from "../databases/databases.ts";
import { sharedStore } from "../databases/shared-store.ts";
import { utc } from "../databases/utc.ts";

onEachDatabase("a merge", (fresh) => {
  const shared = sharedStore(fresh);

  /** A hospital with four patients, of whom the first was merged into the second and that into the third. */
  async function chain(): Promise<{ bay: AlderBay; ids: readonly [number, number, number, number]; mergeId: number }> {
    const bay = await alderBay(shared.store);
    const admitted = async (name: string) => (await bay.admit(name, "2024-03-01 10:00")).patientId;
    const ids = [await admitted("P1"), await admitted("P2"), await admitted("P3"), await admitted("P4")] as const;
    const by = bay.by("2024-03-02 10:00");
    const mergeId = await shared.store.tx(async (tx) => {
      await addMerge(tx, by, { fromId: ids[0], intoId: ids[1] });
      return addMerge(tx, by, { fromId: ids[1], intoId: ids[2] });
    });
    return { bay, ids, mergeId };
  }

  const group = (id: number) => shared.store.read((read) => mergedGroup(read, id));

  it("is recorded with who, when, from and into", async () => {
    const { bay, ids, mergeId } = await chain();
    expect(await shared.store.read((read) => standingMerge(read, bay.facilityId, mergeId))).toEqual({
      id: mergeId,
      fromId: ids[1],
      intoId: ids[2],
    });
    const row = await shared.store.read((read) => read.db.patientMerge.findUniqueOrThrow({ where: { id: mergeId } }));
    expect(row).toMatchObject({ mergedBy: bay.personId, undoneAt: null, undoneBy: null });
    expect(row.mergedAt.getTime()).toBe(utc("2024-03-02 10:00"));
  });

  it("makes groups through any number of steps", async () => {
    const { ids } = await chain();
    expect((await group(ids[2])).toSorted()).toEqual([ids[0], ids[1], ids[2]].toSorted());
    expect((await group(ids[1])).toSorted()).toEqual([ids[0], ids[1]].toSorted());
    expect(await group(ids[0])).toEqual([ids[0]]);
    expect(await group(ids[3])).toEqual([ids[3]]);
  });

  it("can be undone once, which is recorded beside it; the rest of the chain stands", async () => {
    const { bay, ids, mergeId } = await chain();
    const by = bay.by("2024-03-03 10:00");
    await shared.store.tx((tx) => undoMerge(tx, by, { id: mergeId, fromId: ids[1], intoId: ids[2] }));
    expect(await shared.store.read((read) => standingMerge(read, bay.facilityId, mergeId))).toBeNull();
    const row = await shared.store.read((read) => read.db.patientMerge.findUniqueOrThrow({ where: { id: mergeId } }));
    expect([row.undoneAt?.getTime(), row.undoneBy]).toEqual([utc("2024-03-03 10:00"), bay.personId]);
    expect(await group(ids[2])).toEqual([ids[2]]);
    expect((await group(ids[1])).toSorted()).toEqual([ids[0], ids[1]].toSorted());
  });

  it("of another facility is not there", async () => {
    const { mergeId } = await chain();
    const other = await alderBay(shared.store);
    expect(await shared.store.read((read) => standingMerge(read, other.facilityId, mergeId))).toBeNull();
  });

  it("names the survivor of those who are told, and of nobody else", async () => {
    const { ids } = await chain();
    await shared.store.tx((tx) => setSurvivor(tx, [ids[0], ids[1]], ids[2]));
    const rows = await shared.store.read((read) =>
      read.db.patient.findMany({ where: { id: { in: [...ids] } }, orderBy: { id: "asc" } }),
    );
    expect(rows.map((row) => row.survivorId)).toEqual([ids[2], ids[2], ids[2], ids[3]]);
  });
});
